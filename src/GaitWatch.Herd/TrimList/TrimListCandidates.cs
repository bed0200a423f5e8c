using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Every reason that asks for a cow on a visit, several a cow.</summary>
internal static class TrimListCandidates
{
    public static IEnumerable<TrimListCandidate> Of(TrimListInputs inputs, VisitBook visits, ILookup<string, Finding> findings, FollowUpPlan plan) =>
        FromAlerts(inputs, visits)
            .Concat(FromRecoveries(inputs, findings))
            .Concat(FromFollowUps(inputs, plan))
            .Concat(FromRoutine(inputs, findings));

    // An examined alert has had its foot lifted: she comes back when she does not recover.
    private static IEnumerable<TrimListCandidate> FromAlerts(TrimListInputs inputs, VisitBook visits)
    {
        var today = inputs.Calendar.DayOf(inputs.AsOf);
        foreach (var alert in inputs.Alerts)
        {
            var urgency = VisitUrgency.Of(alert.Urgency, today, visits.NextFrom(today)?.Visit.Date, inputs.FollowUps.NextVisitWithinDays);
            if (alert.State is not (AlertState.Open or AlertState.Listed) || urgency == Urgency.Watch || alert.RaisedAt > inputs.AsOf)
                continue;
            yield return new TrimListCandidate(
                Entry(inputs, alert.Cow, TrimListReason.Alert, alert.Leg) with
                {
                    Pattern = alert.Pattern,
                    LoadDropPercent = alert.LoadDropPercent,
                    Urgency = urgency,
                    Since = inputs.Calendar.DayOf(alert.OnsetAt),
                },
                $"Alert on the {alert.Leg.InWords()} too.",
                alert.RaisedAt);
        }
    }

    // Of a foot treated twice the later treatment counts.
    private static IEnumerable<TrimListCandidate> FromRecoveries(TrimListInputs inputs, ILookup<string, Finding> findings) => inputs.Recoveries
        .Where(recovery => recovery.TreatedAt <= inputs.AsOf)
        .GroupBy(recovery => (recovery.Cow, recovery.Foot))
        .Select(foot => foot.OrderBy(recovery => recovery.TreatedAt).ThenBy(recovery => recovery.FindingId, StringComparer.Ordinal).Last())
        .Where(recovery => recovery.IsNotRecovering)
        .Select(recovery => new TrimListCandidate(
            Entry(inputs, recovery.Cow, TrimListReason.NotRecovering, recovery.Foot) with { LoadDropPercent = recovery.DropPercentNow },
            $"The {recovery.Foot.InWords()} does not recover ({recovery.Status.WireName()}).",
            findings[recovery.Cow].Where(finding => finding.Foot == recovery.Foot).Select(finding => (DateTimeOffset?)finding.At).Max() ?? recovery.TreatedAt));

    private static IEnumerable<TrimListCandidate> FromFollowUps(TrimListInputs inputs, FollowUpPlan plan) => plan
        .Due(inputs.Visit, inputs.Register)
        .Select(followUp => new TrimListCandidate(
            Entry(inputs, followUp.Cow, Reason(followUp.What), followUp.Foot),
            $"{Capital(followUp.Foot.InWords())}: {followUp.Cause.InWords()}",
            null));

    private static IEnumerable<TrimListCandidate> FromRoutine(TrimListInputs inputs, ILookup<string, Finding> findings)
    {
        foreach (var cow in inputs.Register.Cows)
        {
            var lastTrim = findings[cow].Where(finding => finding.Did(FindingAction.Trimmed)).Select(finding => (DateOnly?)inputs.Calendar.DayOf(finding.At)).Max();
            if (RoutineTrim.DueBecause(inputs.Register.At(cow, inputs.AsOf)!, inputs.Visit, lastTrim, inputs.Routine) is { } why)
                yield return new TrimListCandidate(Entry(inputs, cow, TrimListReason.Routine, null), $"Routine trim: {why}.", null);
        }
    }

    private static TrimListEntry Entry(TrimListInputs inputs, string cow, TrimListReason reason, Leg? leg) =>
        new() { Cow = cow, Pen = inputs.Register.At(cow, inputs.AsOf)?.Pen, Reason = reason, Leg = leg };

    private static TrimListReason Reason(FollowUpTask task) => task switch
    {
        FollowUpTask.BlockCheck => TrimListReason.BlockCheck,
        FollowUpTask.BlockOff => TrimListReason.BlockOff,
        FollowUpTask.WrapOff => TrimListReason.WrapOff,
        _ => TrimListReason.Recheck,
    };

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
