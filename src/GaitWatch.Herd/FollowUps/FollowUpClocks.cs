using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Which follow-ups a finding, or a flag closed by eye, starts.</summary>
internal static class FollowUpClocks
{
    /// <summary>The follow-ups of one finding, none of them done yet.</summary>
    public static IEnumerable<FollowUp> StartedBy(Finding finding, IReadOnlyCollection<Finding> ofCow, VisitBook visits, FarmCalendar calendar, FollowUpOptions options)
    {
        var day = calendar.DayOf(finding.At);
        if (finding.Did(FindingAction.Wrap))
            yield return Make(finding, day, FollowUpTask.WrapOff, FollowUpCause.Wrap, options.WrapOff);
        if (finding.Did(FindingAction.Block))
        {
            if (FindingWarnings.UnsafeBlock(finding, ofCow) is not null)
                yield return Make(finding, day, FollowUpTask.BlockCheck, FollowUpCause.UnsafeBlock, options.UnsafeBlock);
            yield return Make(finding, day, FollowUpTask.BlockCheck, FollowUpCause.Block, options.BlockCheck);
            yield return Make(finding, day, FollowUpTask.BlockOff, FollowUpCause.BlockWorn, options.BlockOff);
        }

        if (finding.LeavesSoftHorn())
            yield return SoftHorn(finding, day, visits, options.SoftHorn);
        if (finding.IsTreatment())
            yield return Make(finding, day, FollowUpTask.Recheck, FollowUpCause.Outcome, options.Outcome);
    }

    /// <summary>The second look that a flag for today asks for when it was closed by eye; null for any other alert.</summary>
    public static FollowUp? StartedBy(Alert alert, VisitBook visits, FarmCalendar calendar, FollowUpOptions options)
    {
        if (alert is not { CloseReason: AlertCloseReason.SeenWalkingSound, ClosedAt: { } closedAt })
            return null;
        var day = calendar.DayOf(closedAt);
        if (VisitUrgency.Of(alert.Urgency, day, visits.NextFrom(day)?.Visit.Date, options.NextVisitWithinDays) != Urgency.Today)
            return null;
        // Cow, leg and instant: an alert's own id may change with late data.
        var restsOn = FormattableString.Invariant($"{alert.Cow}/{alert.Leg}/{closedAt.UtcTicks}");
        return new FollowUp
        {
            Id = FollowUp.MakeId(FollowUpCause.SecondLook, restsOn),
            Cow = alert.Cow,
            Foot = alert.Leg,
            What = FollowUpTask.Recheck,
            Cause = FollowUpCause.SecondLook,
            DueOn = day.AddDays(options.SecondLook.FromDay),
            OverdueOn = day.AddDays(options.SecondLook.ToDay),
        };
    }

    // After 21 days or at the next visit, whichever is first; the span until overdue stays as long.
    private static FollowUp SoftHorn(Finding finding, DateOnly day, VisitBook visits, FollowUpWindow window)
    {
        var followUp = Make(finding, day, FollowUpTask.Recheck, FollowUpCause.SoftHorn, window);
        return visits.NextAfter(day) is { } planned && planned.Visit.Date < followUp.DueOn
            ? followUp with { DueOn = planned.Visit.Date, OverdueOn = planned.Visit.Date.AddDays(window.ToDay - window.FromDay) }
            : followUp;
    }

    private static FollowUp Make(Finding finding, DateOnly day, FollowUpTask what, FollowUpCause cause, FollowUpWindow window) => new()
    {
        Id = FollowUp.MakeId(cause, finding.Id),
        Cow = finding.Cow,
        Foot = finding.Foot,
        What = what,
        Cause = cause,
        DueOn = day.AddDays(window.FromDay),
        OverdueOn = day.AddDays(window.ToDay),
        FindingId = finding.Id,
    };
}
