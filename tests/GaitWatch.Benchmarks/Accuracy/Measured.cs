using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>What an analysis says of a crossing; null figures where it refuses.</summary>
/// <param name="Accepted">Whether it may be used.</param>
/// <param name="WeightKg">Weight.</param>
/// <param name="StrideSeconds">Mean stride time.</param>
/// <param name="Legs">By leg: share, its stated error (null when none is stated), peak, stance.</param>
internal sealed record Measured(bool Accepted, double WeightKg, double StrideSeconds, PerFoot<(double Share, double? Error, double PeakKg, double StanceSeconds)> Legs)
{
    /// <summary>A refusal.</summary>
    public static Measured Refused { get; } = new(false, 0, 0, default);

    /// <summary>What GaitWatch says.</summary>
    public static Measured Of(WindowAnalysis analysis) => Of(analysis.Crossings is [var only] ? only : null);

    /// <summary>What GaitWatch says of a crossing; null where it found none.</summary>
    public static Measured Of(Gait.Crossing? found)
    {
        if (found is not { Reasons.IsEmpty: true } crossing)
            return Refused;
        return new(true, crossing.WeightKg!.Value, crossing.StrideSeconds!.Value, PerFoot.From(foot =>
        {
            var leg = crossing.Legs[(Leg)(int)foot];
            return (leg.Share!.Value, leg.ShareError, leg.PeakKg!.Value, leg.StanceSeconds!.Value);
        }));
    }

    /// <summary>What would be said who knew the true impulse of every footfall, and one stride time for all of them.</summary>
    public static Measured Knowing(SimulatedCrossing crossing)
    {
        var (truth, legs) = (crossing.Truth, crossing.Truth.Legs!.Value);
        var stride = truth.StrideSeconds!.Value;
        var loads = PerFoot.From(foot => truth.Footfalls.Where(footfall => footfall.IsWhole && footfall.Foot == foot).Average(footfall => footfall.ImpulseKgSeconds) / stride);
        var sum = loads.Values().Sum();
        return new(true, sum, stride, PerFoot.From(foot => (loads[foot] / sum, (double?)null, legs[foot].PeakKg!.Value, legs[foot].StanceSeconds!.Value)));
    }
}
