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

    /// <summary>Whether soft new horn is to be expected: horn was taken off, down to the corium or near it.</summary>
    public static bool LeavesSoftHorn(this Finding finding) =>
        finding.Did(FindingAction.LooseHornRemoved) || finding.Did(FindingAction.CoriumExposed);
}
