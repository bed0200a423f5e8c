namespace GaitWatch.Gait;

/// <summary>An electronic ear tag read at the entry of a platform.</summary>
/// <param name="At">When it was read.</param>
/// <param name="Eid">The animal code.</param>
public readonly record struct TagRead(DateTimeOffset At, Eid Eid);
