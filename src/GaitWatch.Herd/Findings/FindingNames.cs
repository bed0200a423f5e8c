namespace GaitWatch.Herd;

/// <summary>Names of a finding's values on the wire, and in words.</summary>
public static class FindingNames
{
    /// <summary>The claw on the wire, which is also its word.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no claw.</exception>
    public static string WireName(this Claw claw) => claw switch
    {
        Claw.Inner => "inner",
        Claw.Outer => "outer",
        Claw.Both => "both",
        _ => throw new ArgumentOutOfRangeException(nameof(claw), claw, "Not a claw of the contract."),
    };

    /// <summary>The stage on the wire, which is also its word.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no stage.</exception>
    public static string WireName(this MStage stage) => stage switch
    {
        MStage.M0 => "M0",
        MStage.M1 => "M1",
        MStage.M2 => "M2",
        MStage.M3 => "M3",
        MStage.M4 => "M4",
        MStage.M41 => "M4.1",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Not a stage of the contract."),
    };

    /// <summary>Whether the skin is raw at this stage: it hurts and it infects others.</summary>
    public static bool IsActive(this MStage stage) => stage is MStage.M1 or MStage.M2 or MStage.M41;

    /// <summary>The action on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no action.</exception>
    public static string WireName(this FindingAction action) => action switch
    {
        FindingAction.Trimmed => "trimmed",
        FindingAction.LooseHornRemoved => "loose-horn-removed",
        FindingAction.ForeignBodyRemoved => "foreign-body-removed",
        FindingAction.CoriumExposed => "corium-exposed",
        FindingAction.Dressing => "dressing",
        FindingAction.Wrap => "wrap",
        FindingAction.WrapOff => "wrap-off",
        FindingAction.Block => "block",
        FindingAction.BlockOff => "block-off",
        FindingAction.BlockLost => "block-lost",
        FindingAction.PainRelief => "pain-relief",
        FindingAction.Antibiotic => "antibiotic",
        FindingAction.ReferToVet => "refer-to-vet",
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "Not an action of the contract."),
    };

    /// <summary>The action in words for a person.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no action.</exception>
    public static string InWords(this FindingAction action) => action switch
    {
        FindingAction.Trimmed => "trimmed",
        FindingAction.LooseHornRemoved => "loose horn off",
        FindingAction.ForeignBodyRemoved => "foreign body out",
        FindingAction.CoriumExposed => "corium bare",
        FindingAction.Dressing => "dressing",
        FindingAction.Wrap => "wrap on",
        FindingAction.WrapOff => "wrap off",
        FindingAction.Block => "block on",
        FindingAction.BlockOff => "block off",
        FindingAction.BlockLost => "block lost",
        FindingAction.PainRelief => "pain relief",
        FindingAction.Antibiotic => "antibiotic",
        FindingAction.ReferToVet => "for the veterinarian",
        _ => throw new ArgumentOutOfRangeException(nameof(action), action, "Not an action of the contract."),
    };

    /// <summary>The severity in words: 1 mild, 2 moderate, 3 severe.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the three.</exception>
    public static string SeverityInWords(int severity) => severity switch
    {
        1 => "mild",
        2 => "moderate",
        3 => "severe",
        _ => throw new ArgumentOutOfRangeException(nameof(severity), severity, "A severity is 1, 2 or 3."),
    };
}
