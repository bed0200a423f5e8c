namespace GaitWatch.Herd;

/// <summary>What was done to a foot, in the order of the work. Names on the wire: <see cref="FindingNames"/>.</summary>
public enum FindingAction
{
    /// <summary>The claws were trimmed.</summary>
    Trimmed,

    /// <summary>Loose horn was taken off.</summary>
    LooseHornRemoved,

    /// <summary>A stone or other body was taken out.</summary>
    ForeignBodyRemoved,

    /// <summary>The corium lies bare.</summary>
    CoriumExposed,

    /// <summary>A dressing was put on.</summary>
    Dressing,

    /// <summary>A wrap was put on; it holds the dressing and comes off within days.</summary>
    Wrap,

    /// <summary>A wrap was taken off.</summary>
    WrapOff,

    /// <summary>A block was put on a claw, so that the other carries nothing.</summary>
    Block,

    /// <summary>A block was taken off.</summary>
    BlockOff,

    /// <summary>A block was found to have come off by itself.</summary>
    BlockLost,

    /// <summary>Something against pain was given.</summary>
    PainRelief,

    /// <summary>An antibiotic was given.</summary>
    Antibiotic,

    /// <summary>She is one for the veterinarian.</summary>
    ReferToVet,
}
