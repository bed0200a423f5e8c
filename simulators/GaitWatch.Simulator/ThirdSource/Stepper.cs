namespace GaitWatch.Simulator;

/// <summary>A cow of the third source: what she weighs, how she shares it, how long and where her feet stand.</summary>
internal sealed record Stepper
{
    public required double WeightKg { get; init; }

    /// <summary>Part of her weight on each leg.</summary>
    public required PerFoot<double> Shares { get; init; }

    /// <summary>Part of the usual stance that each foot stands: fore and hind feet differ, a sore one stands shorter.</summary>
    public required PerFoot<double> StancePart { get; init; }

    /// <summary>Her stride's length over that of the usual cow.</summary>
    public required double StrideFactor { get; init; }

    /// <summary>Her stance in a stride of 1.27 s: that less a swing of about 0.44 s (Flower F.C. et al. 2006, J Dairy Sci 89:2084), s.</summary>
    public required double Stance { get; init; }

    /// <summary>Of each second that a stride takes longer, so many go to the stance (1: the swing always lasts alike; below it lasts longer too).</summary>
    public required double StanceOfLonger { get; init; }

    /// <summary>Strides from a left hind contact to that of each foot: about a quarter stride apart in a walk.</summary>
    public required PerFoot<double> Lags { get; init; }

    /// <summary>Where a hind foot lands ahead of where the fore foot stood, m.</summary>
    public required double TrackUpMetres { get; init; }

    /// <summary>Half the length of a sole, m.</summary>
    public required double HalfSoleMetres { get; init; }

    /// <summary>How long a foot stands in a stride, s.</summary>
    public double StanceSeconds(Foot foot, double strideSeconds) =>
        Math.Clamp(StancePart[foot] * (Stance + (StanceOfLonger * (strideSeconds - 1.27))), 0.55 * strideSeconds, 0.79 * strideSeconds);

    /// <summary>One in four is sore on a leg, by 4 to 28 %.</summary>
    public static Stepper Draw(SeededRandom random)
    {
        var shares = LoadShares.Of(random.Uniform(0.52, 0.565), random.Normal(0.5, 0.01, 0.47, 0.53), random.Normal(0.5, 0.012, 0.465, 0.535));
        var foreStance = random.Uniform(0.99, 1.01);
        var stance = PerFoot.From(foot => foot.IsFore() ? foreStance : 2 - foreStance);
        if (random.Chance(0.25))
        {
            var sore = (random.Chance(0.8) ? Foot.Lh : Foot.Lf) + random.Below(2);
            var drop = random.Uniform(0.04, 0.28);
            shares = shares.Sore(sore, drop);
            var usual = stance;
            stance = PerFoot.From(foot => usual[foot] * (foot == sore ? 1 - (0.25 * drop) : 1));
        }

        var (fore, half) = (random.Normal(0.25, 0.012, 0.21, 0.29), random.Normal(0.5, 0.007, 0.48, 0.52));
        return new()
        {
            WeightKg = random.Normal(640, 60, 470, 840),
            Shares = shares,
            StancePart = stance,
            StrideFactor = random.Normal(1, 0.045, 0.9, 1.1),
            Stance = random.Normal(0.83, 0.02, 0.78, 0.88),
            StanceOfLonger = random.Uniform(0.7, 1),
            Lags = new(fore, fore + random.Normal(0.5, 0.007, 0.48, 0.52), 0, half),
            TrackUpMetres = random.Uniform(-0.08, 0.08),
            HalfSoleMetres = random.Uniform(0.062, 0.068),
        };
    }
}
