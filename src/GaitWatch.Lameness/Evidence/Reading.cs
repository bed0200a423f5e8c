namespace GaitWatch.Lameness;

/// <summary>A passage as the evidence sees it.</summary>
/// <param name="Value">Its balances.</param>
/// <param name="ExtraError">Measuring error beyond the usual, balances squared.</param>
/// <param name="Ticks">When, UTC ticks.</param>
/// <param name="Day">The farm day, days since 1 January of year 1.</param>
internal readonly record struct Reading(Vector3 Value, Matrix3 ExtraError, long Ticks, long Day);
