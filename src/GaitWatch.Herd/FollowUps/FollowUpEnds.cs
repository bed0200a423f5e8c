namespace GaitWatch.Herd;

/// <summary>Which later findings of the same foot do what a follow-up asks for.</summary>
internal static class FollowUpEnds
{
    /// <summary>Whether a finding does it.</summary>
    /// <param name="followUp">What is due.</param>
    /// <param name="startedAt">When its clock started.</param>
    /// <param name="finding">A finding of the same foot.</param>
    /// <param name="calendar">The farm's days.</param>
    public static bool IsDoneBy(FollowUp followUp, DateTimeOffset startedAt, Finding finding, FarmCalendar calendar)
    {
        if (finding.At <= startedAt || finding.Id == followUp.FindingId)
            return false;
        var day = calendar.DayOf(finding.At);
        // Two findings of one sitting are one work: a block put on for the second claw does not end what the first began.
        var isLater = finding.At - startedAt > FootWork.OneSession;
        return followUp.Cause switch
        {
            FollowUpCause.Wrap => finding.Did(FindingAction.WrapOff) || (isLater && finding.Did(FindingAction.Wrap)),
            FollowUpCause.BlockWorn => EndsBlock(finding, isLater),
            FollowUpCause.Block => EndsBlock(finding, isLater) || (isLater && day >= followUp.DueOn),
            FollowUpCause.UnsafeBlock => EndsBlock(finding, isLater) || isLater,
            // Soft horn, outcome and second look ask for the foot in hand, and no sooner than it can tell anything. A foot treated
            // anew begins anew.
            FollowUpCause.Outcome => isLater && (day >= followUp.DueOn || finding.BeginsAnew()),
            FollowUpCause.SecondLook => isLater,
            _ => isLater && (day >= followUp.DueOn || finding.LeavesSoftHorn()),
        };
    }

    private static bool EndsBlock(Finding finding, bool isLater) =>
        finding.Did(FindingAction.BlockOff) || finding.Did(FindingAction.BlockLost) || (isLater && finding.Did(FindingAction.Block));
}
