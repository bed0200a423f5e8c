using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>One foot's stay on a plate.</summary>
/// <param name="Leg">Whose foot.</param>
/// <param name="Contact">When it came down.</param>
/// <param name="Lift">When it left.</param>
/// <param name="X">Where it stood in the middle of the stance, metres from the entry edge.</param>
/// <param name="IsWhole">False when it stood partly off the plate, or its load could not be told from another's: its figures are not used.</param>
/// <param name="CurveHz">Rate of <paramref name="CurveKg"/>, Hz.</param>
/// <param name="CurveKg">Its force over time from <paramref name="Contact"/> on, kg.</param>
public sealed record Footfall(
    Leg Leg, DateTimeOffset Contact, DateTimeOffset Lift, double X, bool IsWhole, double CurveHz, ImmutableArray<float> CurveKg);
