namespace GaitWatch.Lameness;

/// <summary>What happened to an alert.</summary>
public enum AlertChangeKind
{
    /// <summary>It was raised.</summary>
    Raised,

    /// <summary>Drop, probability or urgency moved enough to be told anew.</summary>
    Updated,

    /// <summary>It got worse: what was said before no longer suffices.</summary>
    Worsened,

    /// <summary>It was closed.</summary>
    Closed,
}

/// <summary>A step in an alert's life.</summary>
/// <param name="At">When, in event time.</param>
/// <param name="Kind">What happened.</param>
/// <param name="Alert">The alert after it.</param>
public sealed record AlertChange(DateTimeOffset At, AlertChangeKind Kind, Alert Alert);
