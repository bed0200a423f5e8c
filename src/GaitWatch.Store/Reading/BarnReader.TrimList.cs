using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Visits, the trimmer's list, and what the farm itself has to do.
public sealed partial class BarnReader
{
    /// <summary>Every visit, past ones too, by day.</summary>
    public async Task<VisitBook> VisitsAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return (await BookAsync(context, cancellation)).Visits;
    }

    /// <summary>
    /// A visit's list in the order through the chute; without a day that of the next visit, and where none is planned who would
    /// be on one today. A past visit's list is as it stood at the end of its day.
    /// </summary>
    public async Task<TrimList> TrimListAsync(DateOnly? visit, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        var today = _options.Calendar.DayOf(now.Newest);
        var day = visit ?? now.Book.Visits.NextFrom(today)?.Visit.Date ?? today;
        return await ListAsync(context, now, day, today, cancellation);
    }

    /// <summary>What the farm itself has to do on a day: wraps off, blocks to look at, before the trimmer comes again.</summary>
    public async Task<IReadOnlyList<FollowUp>> FollowUpsAsync(DateOnly day, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        var plan = await PlanAsync(context, now, day, cancellation);
        return plan.FarmTasks(day, now.Register);
    }

    /// <summary>One follow-up, done or not; null when there is none of that id.</summary>
    public async Task<FollowUp?> FollowUpAsync(string id, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return (await PlanAsync(context, await NowAsync(context, cancellation), null, cancellation)).Find(id);
    }

    private async Task<FollowUpPlan> PlanAsync(BarnContext context, Now now, DateOnly? on, CancellationToken cancellation) => FollowUpPlan.Of(
        now.Writes, await AlertsToActOnAsync(context, null, cancellation), _options.Calendar, new FollowUpOptions(), await RecoveriesAtAsync(context, now, null, null, cancellation),
        on: on, log: now.Findings);

    private async Task<TrimList> ListAsync(BarnContext context, Now now, DateOnly day, DateOnly today, CancellationToken cancellation)
    {
        DateTimeOffset? past = day < today ? _options.Calendar.EndOf(day).AddMilliseconds(-1) : null;
        var lastSeen = await context.CowsSeen.ToListAsync(cancellation);
        return TrimListComposer.Compose(new TrimListInputs
        {
            AsOf = past ?? now.AsOf,
            Visit = day,
            Calendar = _options.Calendar,
            Register = now.Register,
            Writes = now.Writes,
            Findings = past is null ? now.Findings : null,
            Alerts = [.. (await AlertsToActOnAsync(context, past, cancellation)).Select(alert => WithCalendar(alert, day, now, past))],
            Recoveries = await RecoveriesAtAsync(context, now, null, past, cancellation),
            LastSeen = lastSeen.ToImmutableDictionary(row => row.Cow, row => row.LastSeenAt.FromMs(), StringComparer.Ordinal),
            // Silence is measured against the newest crossing, not against what was entered after it.
            NotSeenAfter = TimeSpan.FromDays(2) + (past is null ? now.AsOf - now.Newest : TimeSpan.Zero),
        });
    }

    private Alert WithCalendar(Alert alert, DateOnly visit, Now now, DateTimeOffset? past) => alert with
    {
        Urgency = VisitUrgency.Of(
            alert.Urgency, _options.Calendar.DayOf(past ?? now.Newest), now.Book.Visits.On(visit)?.Visit.Date, _options.NextVisitWithinDays),
    };

    private async Task<Now> NowAsync(BarnContext context, CancellationToken cancellation)
    {
        var book = await BookAsync(context, cancellation);
        var newest = await NewestAsync(context, cancellation);
        return new Now(book, newest, book.NewestAt is { } written && written > newest ? written : newest);
    }

    /// <summary>Where event time stands.</summary>
    /// <param name="Book">What people entered.</param>
    /// <param name="Newest">The newest crossing.</param>
    /// <param name="AsOf">The newest of crossings and of what people entered.</param>
    private sealed record Now(Book Book, DateTimeOffset Newest, DateTimeOffset AsOf)
    {
        public ImmutableArray<FarmWrite> Writes => Book.Writes;

        public HerdRegister Register => Book.Register;

        public FindingLog Findings => Book.Findings;
    }
}
