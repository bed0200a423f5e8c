namespace GaitWatch.Lameness;

/// <summary>One farm day of a treated leg.</summary>
/// <param name="Day">The day.</param>
/// <param name="DaysSinceTreatment">Mean time of its passages after treatment, days; below 0 before it.</param>
/// <param name="DropPercent">Mean drop of its passages, per cent of the expected share.</param>
/// <param name="Passages">How many it rests on.</param>
/// <param name="IsMasked">Whether a block or wrap was on, had just been put on or come off, or pain relief still worked: no proof of recovery.</param>
/// <param name="IsSettling">Whether a block or wrap had just been put on or come off: no evidence of anything.</param>
public readonly record struct DailyDrop(DateOnly Day, double DaysSinceTreatment, double DropPercent, int Passages, bool IsMasked, bool IsSettling);
