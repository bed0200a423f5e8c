namespace GaitWatch.Herd;

/// <summary>What a person decided about a cow and a visit.</summary>
public enum TrimListHand
{
    /// <summary>She is to be on the list.</summary>
    Pinned,

    /// <summary>She is not to be on the list.</summary>
    Removed,

    /// <summary>What was decided before no longer holds.</summary>
    AsRule,
}
