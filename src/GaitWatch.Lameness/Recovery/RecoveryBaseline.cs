namespace GaitWatch.Lameness;

/// <summary>The normal that a recovery is held against.</summary>
/// <param name="LearnedUntil">The newest passage it rests on. One that rests on passages after onset is not used: she may have been lame in them.</param>
/// <param name="DailySdPercent">
/// Standard deviation of her daily mean drop while sound, per cent; null to take it from the readings before onset.
/// </param>
public sealed record RecoveryBaseline(DateTimeOffset LearnedUntil, double? DailySdPercent = null);
