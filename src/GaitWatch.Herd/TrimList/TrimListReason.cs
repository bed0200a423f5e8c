namespace GaitWatch.Herd;

/// <summary>Why a cow is on the trim list, in the order in which reasons are served within a pen.</summary>
public enum TrimListReason
{
    /// <summary>A treated foot does not take weight again. Wire: <c>not-recovering</c>.</summary>
    NotRecovering,

    /// <summary>An open alert. Wire: <c>alert</c>.</summary>
    Alert,

    /// <summary>A finding asked to see her again. Wire: <c>recheck</c>.</summary>
    Recheck,

    /// <summary>A block is to be looked at. Wire: <c>block-check</c>.</summary>
    BlockCheck,

    /// <summary>A block is to come off. Wire: <c>block-off</c>.</summary>
    BlockOff,

    /// <summary>A wrap is to come off. Wire: <c>wrap-off</c>.</summary>
    WrapOff,

    /// <summary>A routine trim is due. Wire: <c>routine</c>.</summary>
    Routine,
}
