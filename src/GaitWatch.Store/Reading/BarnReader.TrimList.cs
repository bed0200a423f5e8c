using GaitWatch.Herd;
using GaitWatch.Lameness;

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
        var now = await NowAsync(cancellation);
        return await OnceAsync(
            now, "tasks", day, async context => (IReadOnlyList<FollowUp>)(await PlanAsync(context, now, day)).FarmTasks(day, now.Register), cancellation);
    }

    /// <summary>One follow-up, done or not; null when there is none of that id.</summary>
    public async Task<FollowUp?> FollowUpAsync(string id, CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return (await OnceAsync(now, "plan", null, context => PlanAsync(context, now, null), cancellation)).Find(id);
    }

    private async Task<FollowUpPlan> PlanAsync(BarnContext context, Now now, DateOnly? on) => FollowUpPlan.Of(
        now.Writes, await AlertsToActOnAsync(context, now, null, CancellationToken.None), _options.Calendar, new FollowUpOptions(),
        await RecoveriesAsync(now, everTreated: false, CancellationToken.None), on: on, log: now.Findings);

    // A list as it stood at the end of a day of the past is asked for seldom, and is composed for who asks.
    private Task<TrimList> ListAsync(BarnContext context, Now now, DateOnly day, DateOnly today, CancellationToken cancellation) => day < today
        ? ComposeAsync(context, now, day, _options.Calendar.EndOf(day).AddMilliseconds(-1), cancellation)
        : OnceAsync(now, "list", day, fresh => ComposeAsync(fresh, now, day, null, CancellationToken.None), cancellation);

    private async Task<TrimList> ComposeAsync(BarnContext context, Now now, DateOnly day, DateTimeOffset? past, CancellationToken cancellation)
    {
        // What stands now is read by several at once; of the past, one after the other on the one connection.
        var seen = LastSeenAsync(now, cancellation);
        var recoveries = past is null ? RecoveriesAsync(now, everTreated: false, cancellation) : null;
        var alerts = await AlertsToActOnAsync(context, now, past, cancellation);
        return TrimListComposer.Compose(new TrimListInputs
        {
            AsOf = past ?? now.AsOf,
            Visit = day,
            Calendar = _options.Calendar,
            Register = now.Register,
            Writes = now.Writes,
            Findings = past is null ? now.Findings : null,
            Alerts = [.. alerts.Select(alert => WithCalendar(alert, day, now, past))],
            Recoveries = await (recoveries ?? JudgeAsync(context, now, null, past, false, cancellation)),
            LastSeen = await seen,
            // Silence is measured against the newest crossing, not against what was entered after it.
            NotSeenAfter = TimeSpan.FromDays(2) + (past is null ? now.AsOf - now.Newest : TimeSpan.Zero),
        });
    }

    private Alert WithCalendar(Alert alert, DateOnly visit, Now now, DateTimeOffset? past) => alert with
    {
        Urgency = VisitUrgency.Of(
            alert.Urgency, _options.Calendar.DayOf(past ?? now.Newest), now.Book.Visits.On(visit)?.Visit.Date, _options.NextVisitWithinDays),
    };
}
