namespace GaitWatch.Simulator;

/// <summary>
/// How fast she goes from moment to moment: a speed she means to keep, about which she wanders as chance has it (an Ornstein-Uhlenbeck
/// process, smoothed once, so that she is never jerked), and strides whose length grows evenly with speed.
/// </summary>
internal sealed class WanderingPace
{
    private const double TickSeconds = 0.005;

    /// <summary>So far before and beyond the plates she is followed, m.</summary>
    private const double BeyondMetres = 7;

    private readonly List<double> _x = [], _strides = [], _speeds = [];

    /// <param name="random">Draws how she wanders.</param>
    /// <param name="meant">The speed she means to go at a place and time, m/s.</param>
    /// <param name="wander">Standard deviation of the wandering, as part of the speed.</param>
    /// <param name="strideFactor">Her stride's length over that of the usual cow.</param>
    /// <param name="plateLength">Length of the plates, m.</param>
    public WanderingPace(SeededRandom random, Func<double, double, double> meant, double wander, double strideFactor, double plateLength)
    {
        var memorySeconds = random.Uniform(0.5, 1.5);
        const double smoothSeconds = 0.15;
        var keep = Math.Exp(-TickSeconds / memorySeconds);
        var (x, strides, rough, smooth) = (-BeyondMetres, random.Uniform(), random.Normal(0, wander), 0.0);
        for (var seconds = 0.0; x < plateLength + BeyondMetres; seconds += TickSeconds)
        {
            rough = (keep * rough) + (Math.Sqrt(1 - (keep * keep)) * random.Normal(0, wander));
            smooth += TickSeconds / smoothSeconds * (rough - smooth);
            var speed = meant(x, seconds) * Math.Exp(Math.Clamp(smooth, -0.2, 0.2));
            _x.Add(x);
            _strides.Add(strides);
            _speeds.Add(speed);
            x += speed * TickSeconds;
            strides += TickSeconds / StrideSeconds(speed, strideFactor);
        }
    }

    /// <summary>Strides done at the end.</summary>
    public double LastStrides => _strides[^1];

    /// <summary>
    /// A stride of 1.03 m + 0.33 s x speed passes near both published groups (Flower F.C. et al. 2005, J Dairy Sci 88:3166-3173: 1.395 m at
    /// 1.11 m/s, 1.300 m at 0.90 m/s).
    /// </summary>
    public static double StrideSeconds(double speed, double strideFactor) => Math.Clamp(strideFactor * ((1.03 / speed) + 0.33), 1.0, 2.2);

    /// <summary>When so many strides were done, s.</summary>
    public double SecondsAt(double strides)
    {
        var at = _strides.BinarySearch(strides);
        if (at >= 0)
            return at * TickSeconds;
        var after = Math.Clamp(~at, 1, _strides.Count - 1);
        return (after - 1 + ((strides - _strides[after - 1]) / (_strides[after] - _strides[after - 1]))) * TickSeconds;
    }

    /// <summary>Where the middle of her fore feet is, m from the entry edge.</summary>
    public double XAt(double seconds) => Between(_x, seconds);

    /// <summary>Acceleration over the half second around a moment, m/s2.</summary>
    public double AccelerationAround(double seconds) => (Between(_speeds, seconds + 0.25) - Between(_speeds, seconds - 0.25)) / 0.5;

    private static double Between(List<double> values, double seconds)
    {
        var at = Math.Clamp(seconds / TickSeconds, 0, values.Count - 1.001);
        return values[(int)at] + ((at - (int)at) * (values[(int)at + 1] - values[(int)at]));
    }
}
