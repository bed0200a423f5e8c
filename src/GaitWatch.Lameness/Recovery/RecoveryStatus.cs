namespace GaitWatch.Lameness;

/// <summary>Where a treated foot stands, as far as the load it carries can tell.</summary>
public enum RecoveryStatus
{
    /// <summary>The data cannot tell yet. Wire: <c>too-early</c>.</summary>
    TooEarly,

    /// <summary>It carries more than it did, and not yet its normal. Wire: <c>recovering</c>.</summary>
    Recovering,

    /// <summary>Shown to be back within the normal band. Wire: <c>recovered</c>.</summary>
    Recovered,

    /// <summary>Shown to be outside the normal band and not to be getting there. Wire: <c>stalled</c>.</summary>
    Stalled,

    /// <summary>Shown to carry less than it did. Wire: <c>worse</c>.</summary>
    Worse,
}
