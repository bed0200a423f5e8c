using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Flags and alerts.
public sealed partial class BarnReader
{
    /// <summary>Alerts open at the end of a farm day as they stood then (the newest day and later: now), worst first: by urgency, then by drop.</summary>
    public async Task<IReadOnlyList<AlertView>> FlagsAsync(DateOnly day, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        if (day >= _options.Calendar.DayOf(now.Newest))
            return await OpenFlagsAsync(now, cancellation);

        var shown = await ShowAsync(context, now, cancellation);
        var end = _options.Calendar.EndOf(day).ToMs();
        var then = await context.Alerts
            .Where(row => row.RaisedAt < end && (row.ClosedAt == null || row.ClosedAt >= end))
            .Select(row => new
            {
                Row = row,
                Body = context.AlertSteps.Where(step => step.AlertId == row.Id && step.At < end).OrderByDescending(step => step.Number).First().Body,
            })
            .ToListAsync(cancellation);
        var lastInstant = end.FromMs().AddMilliseconds(-1);
        return WorstFirst(then.Select(alert => shown.View(alert.Row, StoreJson.Read<Alert>(alert.Body), lastInstant, lastInstant)));
    }

    /// <summary>Alerts raised in [from, to), newest first, as they stand now.</summary>
    public async Task<IReadOnlyList<AlertView>> AlertsAsync(
        DateTimeOffset? from, DateTimeOffset? to, AlertState? state, string? cow, Page page, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var rows = context.Alerts.AsQueryable();
        if (from is { } since)
            rows = rows.Where(row => row.RaisedAt >= since.ToMs());
        if (to is { } until)
            rows = rows.Where(row => row.RaisedAt < until.ToMs());
        // Whether an open alert is listed is told by the calendar of visits, not by its row.
        if (state is { } wanted)
            rows = rows.Where(row => row.State == (int)(wanted == AlertState.Listed ? AlertState.Open : wanted));
        if (cow is not null)
            rows = rows.Where(row => row.Cow == cow);
        var now = await NowAsync(context, cancellation);
        var (shown, newest) = (await ShowAsync(context, now, cancellation), now.Newest);
        rows = rows.OrderByDescending(row => row.RaisedAt).ThenBy(row => row.Id);
        if (state is not (AlertState.Open or AlertState.Listed))
            return [.. (await rows.Skip(page.Skip).Take(page.Size).ToListAsync(cancellation)).Select(row => shown.View(row, StoreJson.Read<Alert>(row.Body), newest))];
        var name = state.Value.WireName();
        return [.. (await rows.ToListAsync(cancellation)).Select(row => shown.View(row, StoreJson.Read<Alert>(row.Body), newest)).Where(alert => alert.State == name).Skip(page.Skip).Take(page.Size)];
    }

    /// <summary>What an alert's id leads to; null when it never was one.</summary>
    public async Task<AlertLookup?> AlertAsync(string id, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        if (await context.Alerts.FirstOrDefaultAsync(row => row.Id == id, cancellation) is { } found)
        {
            var now = await NowAsync(context, cancellation);
            return new AlertLookup((await ShowAsync(context, now, cancellation)).View(found, StoreJson.Read<Alert>(found.Body), now.Newest), null, false);
        }

        // A successor may have been replaced in its turn; the walk ends at an alert, at a withdrawn one, or where it has been before.
        var walked = new HashSet<string>(StringComparer.Ordinal);
        for (string? at = id; at is not null && walked.Add(at);)
        {
            var redirect = await context.AlertRedirects.FirstOrDefaultAsync(row => row.OldId == at, cancellation);
            if (redirect is null)
                return at == id ? null : new AlertLookup(null, at, false);
            at = redirect.NewId;
        }

        return new AlertLookup(null, null, true);
    }

    /// <summary>Every step of an alert's life, oldest first; empty when there is no such alert.</summary>
    public async Task<IReadOnlyList<AlertChange>> AlertStepsAsync(string id, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var rows = await context.AlertSteps.Where(row => row.AlertId == id).OrderBy(row => row.Number).ToListAsync(cancellation);
        return [.. rows.Select(row => new AlertChange(row.At.FromMs(), (AlertChangeKind)row.Kind, StoreJson.Read<Alert>(row.Body)))];
    }

    private Task<IReadOnlyList<AlertView>> OpenFlagsAsync(Now now, CancellationToken cancellation) => OnceAsync<IReadOnlyList<AlertView>>(
        now, "flags", null,
        async context =>
        {
            var show = ShowAsync(context, now, CancellationToken.None);
            await using var own = _contexts.CreateDbContext();
            var open = await own.Alerts.Where(row => row.State != (int)AlertState.Closed).ToListAsync(CancellationToken.None);
            var bodies = open.ConvertAll(row => _alertBodies.Read(row.Id, row.Body));
            var shown = await show;
            return WorstFirst(open.Zip(bodies, (row, alert) => shown.View(row, alert, now.Newest)));
        },
        cancellation);

    /// <summary>Every alert, closed ones too, as it stood at an instant, or now.</summary>
    private async Task<IReadOnlyList<Alert>> AlertsAtAsync(BarnContext context, Now now, DateTimeOffset? past, CancellationToken cancellation)
    {
        if (past is not { } instant)
            return await OnceAsync(now, "alerts", null, ReadAlertsAsync, cancellation);
        var until = instant.ToMs();
        var bodies = await context.Alerts
            .Where(row => row.RaisedAt <= until)
            .Select(row => context.AlertSteps.Where(step => step.AlertId == row.Id && step.At <= until).OrderByDescending(step => step.Number).First().Body)
            .ToListAsync(cancellation);
        return [.. bodies.Select(StoreJson.Read<Alert>)];
    }

    private async Task<ImmutableArray<Alert>> ReadAlertsAsync(BarnContext context)
    {
        using var query = new PreparedCommand(context.Database.GetDbConnection(), """SELECT "Id", "Body" FROM alerts ORDER BY "RaisedAt", "Id" """, 0);
        using var rows = query.Query();
        var alerts = ImmutableArray.CreateBuilder<Alert>();
        while (await rows.ReadAsync(CancellationToken.None))
            alerts.Add(_alertBodies.Read(rows.GetString(0), rows.GetString(1)));
        _alertBodies.Keep([.. alerts.Select(alert => alert.Id)]);
        return alerts.ToImmutable();
    }

    /// <summary>The alerts that ask for something: open ones, and those closed by eye; of the past, every one as it stood then.</summary>
    private async Task<IReadOnlyList<Alert>> AlertsToActOnAsync(BarnContext context, Now now, DateTimeOffset? past, CancellationToken cancellation)
    {
        var alerts = await AlertsAtAsync(context, now, past, cancellation);
        return past is not null ? alerts : [.. alerts.Where(alert => alert.State != AlertState.Closed || alert.CloseReason == AlertCloseReason.SeenWalkingSound)];
    }

    private static List<AlertView> WorstFirst(IEnumerable<AlertView> alerts) =>
    [
        .. alerts
            .OrderBy(alert => Array.IndexOf(s_byUrgency, alert.Urgency))
            .ThenByDescending(alert => alert.LoadDropPercent)
            .ThenBy(alert => alert.Cow, NaturalOrder.Comparer)
            .ThenBy(alert => alert.Id, StringComparer.Ordinal),
    ];

    private static readonly string[] s_byUrgency = [.. Enum.GetValues<Urgency>().Select(urgency => urgency.WireName())];

    private async Task<AlertShow> ShowAsync(BarnContext context, Now now, CancellationToken cancellation) =>
        new(now.Book, await LastSeenAsync(now, cancellation), await ListedAsync(context, now, cancellation), _options);

    private Task<ImmutableDictionary<string, DateTimeOffset>> LastSeenAsync(Now now, CancellationToken cancellation) => OnceAsync(
        now, "last-seen", null,
        async context => (await context.CowsSeen.ToListAsync(CancellationToken.None)).ToImmutableDictionary(row => row.Cow, row => row.LastSeenAt.FromMs(), StringComparer.Ordinal),
        cancellation);

    // Cows with a place on the next visit's list.
    private async Task<HashSet<string>> ListedAsync(BarnContext context, Now now, CancellationToken cancellation)
    {
        var today = _options.Calendar.DayOf(now.Newest);
        if (now.Book.Visits.NextFrom(today) is not { } next)
            return [];
        var list = await ListAsync(context, now, next.Visit.Date, today, cancellation);
        return [.. list.Rows.Where(row => row.HasPlace).Select(row => row.Cow)];
    }

    /// <summary>Shows alerts with what the register and the calendar add.</summary>
    private sealed class AlertShow(
        Book book, ImmutableDictionary<string, DateTimeOffset> lastSeen, HashSet<string> listed, StoreOptions options)
    {
        public AlertView View(AlertRow row, Alert alert, DateTimeOffset asOf, DateTimeOffset? past = null)
        {
            var today = options.Calendar.DayOf(asOf);
            var urgency = VisitUrgency.Of(alert.Urgency, today, book.Visits.NextFrom(today)?.Visit.Date, options.NextVisitWithinDays);
            var isListed = alert.State == AlertState.Open && urgency != Urgency.Watch && listed.Contains(alert.Cow);
            var findings = book.Findings.OfCow(alert.Cow).Where(finding => past is null || finding.At <= past).ToArray();
            var label = AlertLabels.Of([alert], findings, options.Calendar) is [var lifted] ? lifted : null;
            var after = AfterTreatment.Of(alert, TreatedFeet.Of(findings, []), new RecoveryOptions());
            return new AlertView
            {
                Id = alert.Id,
                Cow = alert.Cow,
                Pen = book.Register.At(alert.Cow, asOf)?.Pen,
                Pattern = alert.Pattern.WireName(),
                Leg = alert.Leg.WireName(),
                LegProbability = alert.LegProbability,
                RaisedAt = alert.RaisedAt,
                OnsetAt = alert.OnsetAt,
                LoadDropPercent = alert.LoadDropPercent,
                LoadDropInterval = [alert.LoadDropLowerPercent, alert.LoadDropUpperPercent],
                Urgency = urgency.WireName(),
                State = (isListed ? AlertState.Listed : alert.State).WireName(),
                RevisedAt = row.RevisedAt.FromMs(),
                ClosedAt = alert.ClosedAt,
                CloseReason = alert.CloseReason?.WireName(),
                Label = label?.Kind.WireName(),
                LiftedAt = label?.LiftedAt,
                AfterTreatment = after is null ? null : new AfterTreatmentView(after.WireName, after.FindingId, after.Foot.WireName(), after.TreatedAt, after.InWords(options.Calendar)),
                LastSeenAt = lastSeen.TryGetValue(alert.Cow, out var seen) ? seen : null,
                Explanation = alert.Explanation,
            };
        }
    }
}
