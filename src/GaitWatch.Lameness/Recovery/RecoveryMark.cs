namespace GaitWatch.Lameness;

/// <summary>Something done to a treated foot that a reader of its curve must see.</summary>
/// <param name="At">When.</param>
/// <param name="What">What.</param>
public readonly record struct RecoveryMark(DateTimeOffset At, RecoveryMarkKind What);
