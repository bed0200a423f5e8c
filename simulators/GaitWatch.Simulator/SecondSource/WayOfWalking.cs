namespace GaitWatch.Simulator;

/// <summary>
/// A cow of the second source and how she walks. Stride time falls with speed by a power between 0.5 and 0.8 (Flower F.C. et al. 2005,
/// J Dairy Sci 88:3166-3173: 1.26 s at 1.11 m/s, 1.48 s at 0.90 m/s). Whether a slower stride lengthens the stance alone, or the
/// swing with it, differs from cow to cow.
/// </summary>
internal sealed record WayOfWalking
{
    public double WeightKg { get; init; }

    /// <summary>Part of her weight on each leg.</summary>
    public PerFoot<double> Shares { get; init; }

    /// <summary>Part of the usual stance that each foot stands.</summary>
    public PerFoot<double> StancePart { get; init; } = new(1, 1, 1, 1);

    public double StrideAtUsualSpeed { get; init; }

    public double StridePower { get; init; }

    /// <summary>Swing at a stride of 1.27 s, s.</summary>
    public double Swing { get; init; }

    /// <summary>0: the swing always lasts alike; 1: it is always the same part of the stride.</summary>
    public double SwingPower { get; init; }

    /// <summary>Strides from a hind contact to the fore contact of its side.</summary>
    public double ForeLag { get; init; }

    /// <summary>Strides from a left contact to the right one of the pair.</summary>
    public double ForeHalf { get; init; } = 0.5;

    public double HindHalf { get; init; } = 0.5;

    public double TrackUpMetres { get; init; }

    /// <summary>Whether the feet's forces come from the body as a whole; otherwise each foot has a curve of its own.</summary>
    public bool IsWholeBody { get; init; }

    public double StrideSecondsAt(double speed) => Math.Clamp(StrideAtUsualSpeed * Math.Pow(speed / 1.11, -StridePower), 1.0, 2.2);

    /// <summary>Part of the stride that a foot stands; 0.56 to 0.78.</summary>
    public double DutyAt(double strideSeconds) =>
        Math.Clamp(1 - (Swing * Math.Pow(strideSeconds / 1.27, SwingPower) / strideSeconds), 0.56, 0.78);

    public double LagOf(Foot foot) => foot switch
    {
        Foot.Lf => ForeLag,
        Foot.Rf => ForeLag + ForeHalf,
        Foot.Lh => 0,
        _ => HindHalf,
    };

    /// <summary>One in four is sore on a leg; a sore leg carries less and stands shorter.</summary>
    public static WayOfWalking Draw(SeededRandom random)
    {
        var wholeBody = random.Chance(0.5);
        var shares = LoadShares.Of(random.Uniform(0.515, 0.565), random.Normal(0.5, 0.01, 0.47, 0.53), random.Normal(0.5, 0.012, 0.465, 0.535));
        var stance = new PerFoot<double>(1, 1, 1, 1);
        if (random.Chance(0.25))
        {
            var sore = Feet.All[random.Chance(0.8) ? 2 + random.Below(2) : random.Below(2)];
            var drop = random.Uniform(0.04, wholeBody ? 0.12 : 0.28);
            var lost = drop * shares[sore];
            var (toOther, toEach) = (lost * random.Uniform(0.6, 0.9), 0.0);
            toEach = 0.5 * (lost - toOther);
            var before = shares;
            shares = PerFoot.From(foot => before[foot] + (foot == sore ? -lost : foot == sore.Opposite() ? toOther : toEach));
            stance = PerFoot.From(foot => foot == sore ? 1 - (0.3 * drop) : foot == sore.Opposite() ? 1 + (0.12 * drop) : 1);
        }

        return new()
        {
            WeightKg = random.Uniform(480, 800),
            Shares = shares,
            StancePart = stance,
            StrideAtUsualSpeed = random.Normal(1.26, 0.06, 1.1, 1.42),
            StridePower = random.Uniform(0.5, 0.8),
            Swing = random.Normal(0.44, 0.022, 0.38, 0.5),
            SwingPower = random.Below(5) switch { 0 or 1 => 1, 2 => 0, _ => random.Uniform() },
            ForeLag = random.Normal(0.25, 0.013, 0.21, 0.29),
            ForeHalf = random.Normal(0.5, 0.008, 0.48, 0.52),
            HindHalf = random.Normal(0.5, 0.008, 0.48, 0.52),
            TrackUpMetres = random.Uniform(-0.085, 0.085),
            IsWholeBody = wholeBody,
        };
    }
}
