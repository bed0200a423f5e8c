using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>One stay of a foot on a plate, as it was. Times are seconds from the first sample.</summary>
/// <param name="Animal">0 for the first animal, 1 for the one behind it.</param>
/// <param name="Foot">Which foot. A person's two feet are <see cref="Foot.Lf"/> and <see cref="Foot.Rf"/>.</param>
/// <param name="ContactSeconds">When it came down.</param>
/// <param name="LiftSeconds">When it left.</param>
/// <param name="X">Where its middle stood, metres from the entry edge; the centre of pressure passes here at mid-stance.</param>
/// <param name="IsWhole">True when it never pressed beyond an edge of the plate.</param>
/// <param name="ImpulseKgSeconds">Force over time that the plate took, kg s.</param>
/// <param name="PeakKg">Its highest force on the plate, kg.</param>
/// <param name="StrideSeconds">Duration of the one stride centred on this stance: half the time between the middles of the stances before and after; null unless the walk is good.</param>
public sealed record FootfallTruth(
    int Animal, Foot Foot, double ContactSeconds, double LiftSeconds, double X, bool IsWhole, double ImpulseKgSeconds, double PeakKg, double? StrideSeconds)
{
    /// <summary>How long it stood, s.</summary>
    public double StanceSeconds => LiftSeconds - ContactSeconds;

    /// <summary>The load the leg carried by this footfall, kg: impulse over stride time. Null without a stride time or when not whole.</summary>
    public double? LoadKg => IsWhole && StrideSeconds is { } stride ? ImpulseKgSeconds / stride : null;
}

/// <summary>What a passage should say of a leg: means over its whole footfalls, as the contract defines them.</summary>
/// <param name="LoadKg">Load, kg.</param>
/// <param name="Share">Load over the sum of the four loads; null when a leg has none.</param>
/// <param name="PeakKg">Peak force, kg.</param>
/// <param name="StanceSeconds">Stance, s.</param>
/// <param name="WholeFootfalls">How many footfalls stood wholly on a plate.</param>
public sealed record LegTruth(double? LoadKg, double? Share, double? PeakKg, double? StanceSeconds, int WholeFootfalls);

/// <summary>What really happened in a crossing.</summary>
/// <param name="WeightKg">Weight of the animal, of the first one where there are two, kg.</param>
/// <param name="Legs">What each leg carried; null unless the walk is good.</param>
/// <param name="StrideSeconds">Mean stride time over the whole footfalls, s; null unless the walk is good.</param>
/// <param name="SpeedMetresPerSecond">Mean speed of her body from the first contact to the last, m/s; null unless the walk is good.</param>
/// <param name="FirstContactSeconds">First contact with a plate, seconds from the first sample.</param>
/// <param name="LastLiftSeconds">Last lift from a plate, seconds from the first sample.</param>
/// <param name="Footfalls">Every stay of a foot on a plate, by contact.</param>
public sealed record CrossingTruth(
    double WeightKg,
    PerFoot<LegTruth>? Legs,
    double? StrideSeconds,
    double? SpeedMetresPerSecond,
    double FirstContactSeconds,
    double LastLiftSeconds,
    ImmutableArray<FootfallTruth> Footfalls);
