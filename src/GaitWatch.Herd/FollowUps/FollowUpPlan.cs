using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>
/// Everything due about feet that were worked on. It needs no passages, and depends on the set of writes and alerts alone, not
/// on their order or the number of copies.
/// </summary>
public sealed class FollowUpPlan
{
    private readonly VisitBook _visits;

    private FollowUpPlan(ImmutableArray<FollowUp> followUps, VisitBook visits)
    {
        FollowUps = followUps;
        _visits = visits;
    }

    /// <summary>Every follow-up, done ones too, by the day it is due.</summary>
    public ImmutableArray<FollowUp> FollowUps { get; }

    /// <summary>Folds findings, visits, what the farm did, and alerts closed by eye.</summary>
    /// <param name="writes">Every write; kinds that do not matter here are passed over.</param>
    /// <param name="alerts">Alerts; only those that were closed by eye matter.</param>
    /// <param name="calendar">The farm's days.</param>
    /// <param name="options">When each thing is due.</param>
    /// <param name="recoveries">Recoveries; a foot shown to have recovered is judged, and need not be lifted for that.</param>
    /// <param name="asOf">The plan as it stood then: what is later is not looked at; null for all.</param>
    /// <param name="on">The day about which will be asked: what began longer before than it is asked for is left out; null for all.</param>
    /// <param name="log">The findings of these writes, where they have been gathered already; null to gather them.</param>
    public static FollowUpPlan Of(
        IEnumerable<FarmWrite> writes,
        IEnumerable<Alert> alerts,
        FarmCalendar calendar,
        FollowUpOptions options,
        IEnumerable<RecoveryAssessment>? recoveries = null,
        DateTimeOffset? asOf = null,
        DateOnly? on = null,
        FindingLog? log = null)
    {
        var held = writes.Where(write => asOf is null || write.At <= asOf).ToArray();
        var visits = VisitBook.Of(held);
        var all = (log ?? FindingLog.Of(held)).Findings.Where(finding => asOf is null || finding.At <= asOf).ToArray();
        // What was found long before the day in question asks for nothing any more.
        var askedFrom = on?.DayNumber > options.AskedForDays ? calendar.StartOf(on.Value.AddDays(-options.AskedForDays)) : DateTimeOffset.MinValue;
        var byCow = all.Where(finding => finding.At >= askedFrom).ToLookup(finding => finding.Cow, StringComparer.Ordinal);
        var done = held.OfType<FollowUpDoneWrite>()
            .GroupBy(write => write.FollowUpId, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Min(write => write.At), StringComparer.Ordinal);
        foreach (var recovery in recoveries ?? [])
        {
            var id = FollowUp.MakeId(FollowUpCause.Outcome, recovery.FindingId);
            if (recovery.RecoveredOn is { } day && (!done.TryGetValue(id, out var said) || calendar.EndOf(day) < said))
                done[id] = calendar.EndOf(day);
        }

        var followUps = new List<FollowUp>();
        foreach (var ofCow in byCow)
        {
            var findings = ofCow.ToArray();
            foreach (var finding in findings)
            {
                foreach (var followUp in FollowUpClocks.StartedBy(finding, findings, visits, calendar, options))
                    followUps.Add(Ended(followUp, finding.At, findings, calendar, done));
            }
        }

        foreach (var alert in alerts)
        {
            if ((asOf is null || alert.ClosedAt <= asOf) && FollowUpClocks.StartedBy(alert, visits, calendar, options) is { } secondLook)
                followUps.Add(Ended(secondLook, alert.ClosedAt!.Value, byCow[alert.Cow], calendar, done));
        }

        return new FollowUpPlan(
            [
                .. followUps.DistinctBy(followUp => followUp.Id).OrderBy(followUp => followUp.DueOn)
                    .ThenBy(followUp => followUp.Cow, NaturalOrder.Comparer).ThenBy(followUp => followUp.Foot)
                    .ThenBy(followUp => followUp.What).ThenBy(followUp => followUp.Id, StringComparer.Ordinal),
            ],
            visits);
    }

    /// <summary>A follow-up by its id; null when there is none.</summary>
    public FollowUp? Find(string id) => FollowUps.FirstOrDefault(followUp => followUp.Id == id);

    /// <summary>
    /// What the farm itself has to do on a day: due, not done, and not to be left to the trimmer because its time is over before
    /// the next visit. On the day of a visit nothing due is the farm's alone.
    /// </summary>
    /// <param name="day">The farm's day.</param>
    /// <param name="register">Cows that have left need nothing.</param>
    public ImmutableArray<FollowUp> FarmTasks(DateOnly day, HerdRegister register)
    {
        var visit = _visits.NextFrom(day)?.Visit.Date;
        return [.. Due(day, register).Where(followUp => visit is not { } next || (next != day && followUp.OverdueOn < next))];
    }

    /// <summary>What the trimmer finds due on the day of a visit, whoever was to do it.</summary>
    /// <param name="visit">The visit's day.</param>
    /// <param name="register">Cows that have left need nothing.</param>
    public ImmutableArray<FollowUp> Due(DateOnly visit, HerdRegister register) =>
        [.. FollowUps.Where(followUp => followUp.IsDue(visit) && !HasLeft(followUp.Cow, visit, register))];

    /// <summary>Whether a cow has left the herd by a day.</summary>
    internal static bool HasLeft(string cow, DateOnly day, HerdRegister register) =>
        register.HistoryOf(cow) is [.., { LeftOn: { } left }] && left <= day;

    private static FollowUp Ended(
        FollowUp followUp, DateTimeOffset startedAt, IEnumerable<Finding> ofCow, FarmCalendar calendar, Dictionary<string, DateTimeOffset> done)
    {
        var by = ofCow.Where(finding => finding.Foot == followUp.Foot && FollowUpEnds.IsDoneBy(followUp, startedAt, finding, calendar))
            .Order(Finding.ByTime).FirstOrDefault();
        if (done.TryGetValue(followUp.Id, out var at) && (by is null || at <= by.At))
            return followUp with { DoneAt = at };
        return by is null ? followUp : followUp with { DoneAt = by.At, DoneByFinding = by.Id };
    }
}
