namespace GaitWatch.Herd;

/// <summary>A visit that does not come when it was promised.</summary>
/// <param name="Date">The day it was promised for.</param>
/// <param name="MovedTo">Where it went; null when it was cancelled.</param>
/// <param name="At">When that was entered.</param>
public sealed record VisitSlip(DateOnly Date, DateOnly? MovedTo, DateTimeOffset At);
