namespace GaitWatch.Lameness;

/// <summary>What was done.</summary>
public enum RecoveryMarkKind
{
    /// <summary>A block was put on. Wire: <c>block</c>.</summary>
    Block,

    /// <summary>A block was taken off. Wire: <c>block-off</c>.</summary>
    BlockOff,

    /// <summary>A block had come off by itself. Wire: <c>block-lost</c>.</summary>
    BlockLost,

    /// <summary>A wrap was put on. Wire: <c>wrap</c>.</summary>
    Wrap,

    /// <summary>A wrap was taken off. Wire: <c>wrap-off</c>.</summary>
    WrapOff,

    /// <summary>Something against pain was given. Wire: <c>pain-relief</c>.</summary>
    PainRelief,
}
