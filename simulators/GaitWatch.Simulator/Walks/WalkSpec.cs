namespace GaitWatch.Simulator;

/// <summary>
/// What a cow brings to a crossing: her weight, how she shares it over her legs, how fast she walks. Published figures that the
/// defaults follow: Flower F.C. et al. 2005, J Dairy Sci 88:3166-3173 (sound: 1.11 m/s, stride 1.26 s and 1.395 m; sole ulcer:
/// 0.90 m/s, 1.48 s, 1.300 m); Flower F.C. et al. 2006, J Dairy Sci 89:2084 (a swing of about 0.44 s whatever the speed).
/// </summary>
public sealed record WalkSpec
{
    /// <summary>Body weight, kg.</summary>
    public double WeightKg { get; init; } = 640;

    /// <summary>Part of her weight that each leg carries over a stride while sound; they sum to 1.</summary>
    public PerFoot<double> Shares { get; init; } = LoadShares.Of(0.54, 0.5, 0.5);

    /// <summary>The leg that hurts; null for a sound cow.</summary>
    public Foot? SoreFoot { get; init; }

    /// <summary>Part of the sore leg's own load that she takes off it, 0 to below 1.</summary>
    public double LoadDrop { get; init; }

    /// <summary>Walking speed half way over the plate, m/s; 0.4 to 1.6 is a walk.</summary>
    public double SpeedMetresPerSecond { get; init; } = 1.05;

    /// <summary>Speed at the exit less speed at the entry, over the speed between; 0 for a steady walk, within -0.6 to 0.6.</summary>
    public double SpeedChange { get; init; }

    /// <summary>Part of her speed that she loses half way over the plate and wins again, as a cow that looks at something; 0 for none, to 0.4.</summary>
    public double SpeedDip { get; init; }

    /// <summary>Her stride time over that of the usual cow at the same speed.</summary>
    public double StrideFactor { get; init; } = 1;

    /// <summary>How long a foot is in the air, s.</summary>
    public double SwingSeconds { get; init; } = 0.445;

    /// <summary>Where a hind foot lands, metres ahead of where the fore foot of its side stood; negative: behind.</summary>
    public double TrackUpMetres { get; init; }

    /// <summary>From a hind foot's contact to that of the fore foot of its side, as part of a stride: about 1/4 in a walk.</summary>
    public double ForeLag { get; init; } = 0.25;

    /// <summary>Where in her stride she meets the entry edge, 0 to 1.</summary>
    public double StartPhase { get; init; }

    /// <summary>True when <see cref="Shares"/> are already those of the sore cow, so that soreness only shortens her stance.</summary>
    public bool SharesIncludeSoreness { get; init; }

    /// <summary>The shares as she walks, soreness included.</summary>
    public PerFoot<double> WalkedShares => SoreFoot is { } foot && !SharesIncludeSoreness ? Shares.Sore(foot, LoadDrop) : Shares;

    /// <summary>Stride time of the usual cow at a speed, s: a power law through the means of Flower 2005 and 2006.</summary>
    /// <param name="speed">Speed, m/s.</param>
    public static double UsualStrideSeconds(double speed) => 1.32 * Math.Pow(speed / 1.05, -0.6);

    /// <summary>Her stride time at a speed, s.</summary>
    /// <param name="speed">Speed, m/s.</param>
    public double StrideSecondsAt(double speed) => Math.Clamp(StrideFactor * UsualStrideSeconds(speed), 1.0, 2.2);

    /// <summary>Part of the stride that a foot stands, at a stride time; 0.55 to 0.78.</summary>
    /// <param name="strideSeconds">Stride time, s.</param>
    public double DutyAt(double strideSeconds) => Math.Clamp(1 - SwingSeconds / strideSeconds, 0.55, 0.78);

    /// <summary>A cow and her way of walking, drawn at random: three in ten are sore on a leg, by 5 to 30 %.</summary>
    /// <param name="random">Where she is drawn from.</param>
    public static WalkSpec Draw(SeededRandom random)
    {
        var sore = random.Chance(0.3);
        return new()
        {
            WeightKg = random.Normal(640, 65, 450, 850),
            Shares = LoadShares.Of(random.Normal(0.54, 0.012, 0.50, 0.58), random.Normal(0.5, 0.008, 0.47, 0.53), random.Normal(0.5, 0.01, 0.47, 0.53)),
            SoreFoot = sore ? (random.Chance(0.85) ? Foot.Lh : Foot.Lf) + random.Below(2) : null,
            LoadDrop = sore ? random.Uniform(0.05, 0.30) : 0,
            SpeedMetresPerSecond = random.Normal(1.05, 0.13, 0.8, 1.4),
            StrideFactor = random.Normal(1, 0.05, 0.88, 1.12),
            SwingSeconds = random.Normal(0.445, 0.02, 0.39, 0.50),
            TrackUpMetres = random.Uniform(-0.08, 0.08),
            ForeLag = random.Normal(0.25, 0.012, 0.21, 0.29),
            StartPhase = random.Uniform(),
        };
    }
}
