namespace GaitWatch.Herd;

/// <summary>How findings of one foot belong together.</summary>
public static class FootWork
{
    /// <summary>Findings of one foot this close together were made while it was in hand once. Common practice, no source.</summary>
    public static TimeSpan OneSession { get; } = TimeSpan.FromHours(2);

    /// <summary>
    /// Whether a finding starts a recovery: something was found, and done about it. Looking, taking off a wrap or block, and a
    /// trim that found nothing start none.
    /// </summary>
    public static bool IsTreatment(this Finding finding) => finding.Lesion != Lesion.None && finding.Actions.Any(action => action is
        FindingAction.Trimmed or FindingAction.LooseHornRemoved or FindingAction.ForeignBodyRemoved or FindingAction.CoriumExposed
        or FindingAction.Dressing or FindingAction.Wrap or FindingAction.Block or FindingAction.PainRelief or FindingAction.Antibiotic);

    /// <summary>
    /// Whether a treatment begins a recovery anew although one is under way: the foot was opened, cleared, or blocked for another
    /// reason than that a block was lost. A trim, a dressing or a wrap at a recheck goes on with the one begun.
    /// </summary>
    public static bool BeginsAnew(this Finding finding) => finding.IsTreatment() && (finding.Actions.Any(action => action is
        FindingAction.LooseHornRemoved or FindingAction.ForeignBodyRemoved or FindingAction.CoriumExposed or FindingAction.Antibiotic)
        || (finding.Did(FindingAction.Block) && !finding.Did(FindingAction.BlockLost)));

    /// <summary>How long a recovery is under way: until the outcome is judged and a week more. After it any treatment begins one.</summary>
    public static TimeSpan UnderWay { get; } = TimeSpan.FromDays(42);

    /// <summary>Whether soft new horn is to be expected: horn was taken off, down to the corium or near it.</summary>
    public static bool LeavesSoftHorn(this Finding finding) =>
        finding.Did(FindingAction.LooseHornRemoved) || finding.Did(FindingAction.CoriumExposed);
}
