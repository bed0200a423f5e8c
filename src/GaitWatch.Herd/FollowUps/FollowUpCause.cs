namespace GaitWatch.Herd;

/// <summary>Why a follow-up is due.</summary>
public enum FollowUpCause
{
    /// <summary>A wrap holds a dressing and nothing more; it comes off within days.</summary>
    Wrap,

    /// <summary>A block was put on: does it hold, does she walk better?</summary>
    Block,

    /// <summary>A block has done its work.</summary>
    BlockWorn,

    /// <summary>New horn grown soft hardens and is trimmed.</summary>
    SoftHorn,

    /// <summary>Treated long enough ago to judge whether it helped.</summary>
    Outcome,

    /// <summary>A block may press on a sore claw.</summary>
    UnsafeBlock,

    /// <summary>A flag for today was closed by eye: a foot was not lifted.</summary>
    SecondLook,
}
