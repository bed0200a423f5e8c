using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Benchmarks;

/// <summary>A cow pointed at, by whichever detector.</summary>
/// <param name="Cow">Her place in the herd's list.</param>
/// <param name="Pattern">What is spared.</param>
/// <param name="Leg">The leg; of a pair, the worse.</param>
/// <param name="Day">When, days from the history's first.</param>
internal sealed record Flag(int Cow, AlertPattern Pattern, Leg Leg, double Day)
{
    /// <summary>When it says the trouble began, days; NaN where a detector does not say.</summary>
    public double OnsetDay { get; init; } = double.NaN;

    /// <summary>Between which days it says the trouble began, nine times in ten; NaN where it does not say.</summary>
    public (double Earliest, double Latest) OnsetInterval { get; init; } = (double.NaN, double.NaN);

    /// <summary>The drop it says, per cent.</summary>
    public double DropPercent { get; init; } = double.NaN;

    /// <summary>How probable each leg is; null where a detector does not say.</summary>
    public PerLeg<double>? LegProbability { get; init; }

    /// <summary>True for an alert that stood open already and is told anew because it got worse.</summary>
    public bool IsWorsening { get; init; }
}
