using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>How the cells and plates of a platform err. All ranges are invented within what the trade's scales show.</summary>
public sealed record PlatformSensors
{
    /// <summary>Standard deviation of each cell's white noise, kg.</summary>
    public double NoiseKg { get; init; }

    /// <summary>Zero offset of each cell at the first sample, kg, in the order of the platform's cells; empty for none.</summary>
    public ImmutableArray<double> OffsetKg { get; init; } = [];

    /// <summary>Drift of each cell's zero, kg per hour; empty for none.</summary>
    public ImmutableArray<double> DriftKgPerHour { get; init; } = [];

    /// <summary>What each cell reads for a load of 1; empty for exactly 1.</summary>
    public ImmutableArray<double> Gain { get; init; } = [];

    /// <summary>Frequency of the plates' own bounce, Hz; 0 for a rigid plate.</summary>
    public double RingHz { get; init; }

    /// <summary>Damping ratio of that bounce, 0 to 1.</summary>
    public double RingDamping { get; init; } = 0.15;

    /// <summary>A platform that errs in nothing.</summary>
    public static PlatformSensors Perfect { get; } = new();

    /// <summary>A platform as barns have them: noise 0.3 to 0.8 kg, offsets to 15 kg, gains within about 0.5 %, a bounce at 12 to 30 Hz.</summary>
    /// <param name="random">Where it is drawn from.</param>
    /// <param name="cells">How many cells.</param>
    public static PlatformSensors Draw(SeededRandom random, int cells) => new()
    {
        NoiseKg = random.Uniform(0.3, 0.8),
        OffsetKg = [.. Enumerable.Range(0, cells).Select(_ => random.Uniform(-15, 15))],
        DriftKgPerHour = [.. Enumerable.Range(0, cells).Select(_ => random.Normal(0, 1.5, -5, 5))],
        Gain = [.. Enumerable.Range(0, cells).Select(_ => 1 + random.Normal(0, 0.005 / 2, -0.005, 0.005))],
        RingHz = random.Uniform(12, 30),
        RingDamping = random.Uniform(0.08, 0.3),
    };
}
