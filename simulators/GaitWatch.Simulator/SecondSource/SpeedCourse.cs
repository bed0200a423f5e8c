namespace GaitWatch.Simulator;

/// <summary>Her speed along the lane.</summary>
internal static class SpeedCourse
{
    /// <summary>One pace, but for a wobble of a per cent or two.</summary>
    public static Func<double, double> Steady(SeededRandom random) => Wobbling(random.Normal(1.08, 0.12, 0.8, 1.4), random);

    /// <summary>Slow, stances overlapping: a third; even acceleration; a change at some place; slower for a moment.</summary>
    public static Func<double, double> Varied(SeededRandom random, double plateLength)
    {
        if (random.Chance(1.0 / 3))
            return Wobbling(random.Uniform(0.5, 0.75), random);
        var speed = random.Normal(1.08, 0.1, 0.85, 1.3);
        var change = random.Uniform(0.1, 0.35) * (random.Chance(0.5) ? 1 : -1);
        var place = random.Uniform(0.1, 0.9) * plateLength;
        var width = random.Uniform(0.3, 0.9);
        return random.Below(3) switch
        {
            // v^2 is linear in the way while the acceleration is even.
            0 => x => speed * Math.Sqrt(1 + (2 * change * Math.Clamp((x / plateLength) - 0.5, -0.75, 0.75))),
            1 => x => speed * (1 + (0.5 * change * Math.Tanh((x - place) / width))),
            _ => x => speed * (1 - (Math.Abs(change) * Math.Exp(-0.5 * (x - place) * (x - place) / (width * width)))),
        };
    }

    private static Func<double, double> Wobbling(double speed, SeededRandom random)
    {
        var (height, length, shift) = (random.Uniform(0, 0.02), random.Uniform(1.5, 5), random.Uniform(0, 6.28));
        return x => speed * (1 + (height * Math.Sin((2 * Math.PI * x / length) + shift)));
    }
}
