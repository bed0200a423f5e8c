namespace GaitWatch.Herd;

/// <summary>What is to be done about a foot that was worked on.</summary>
public enum FollowUpTask
{
    /// <summary>Take the wrap off. Wire: <c>wrap-off</c>.</summary>
    WrapOff,

    /// <summary>Look at the block and at the cow. Wire: <c>block-check</c>.</summary>
    BlockCheck,

    /// <summary>Take the block off. Wire: <c>block-off</c>.</summary>
    BlockOff,

    /// <summary>Look at the foot again. Wire: <c>recheck</c>.</summary>
    Recheck,
}
