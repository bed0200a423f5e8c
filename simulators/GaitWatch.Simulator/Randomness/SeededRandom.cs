namespace GaitWatch.Simulator;

/// <summary>
/// Random numbers that are the same for a seed on every machine and every version of .NET, which <see cref="Random"/> does not
/// promise. xoshiro256** (Blackman D., Vigna S. 2021, ACM Trans Math Softw 47:36), its state filled by SplitMix64 from the seed,
/// as its authors advise. Not for secrets. Not thread-safe.
/// </summary>
public sealed class SeededRandom
{
    private ulong _s0, _s1, _s2, _s3;
    private double _spare = double.NaN;

    /// <summary>A stream of its own for each pair of seed and stream number.</summary>
    /// <param name="seed">Any number.</param>
    /// <param name="stream">Separates uses of one seed, so that drawing more in one place changes nothing in another.</param>
    public SeededRandom(long seed, long stream = 0)
    {
        var state = unchecked((ulong)seed * 0x9E3779B97F4A7C15UL ^ SplitMix((ulong)stream));
        _s0 = SplitMix(state);
        _s1 = SplitMix(unchecked(state + 0x9E3779B97F4A7C15UL));
        _s2 = SplitMix(unchecked(state + 2 * 0x9E3779B97F4A7C15UL));
        _s3 = SplitMix(unchecked(state + 3 * 0x9E3779B97F4A7C15UL));
    }

    /// <summary>Starts from a given state, to be held against published outputs.</summary>
    internal SeededRandom(ulong s0, ulong s1, ulong s2, ulong s3) => (_s0, _s1, _s2, _s3) = (s0, s1, s2, s3);

    private static ulong SplitMix(ulong z)
    {
        unchecked
        {
            z += 0x9E3779B97F4A7C15UL;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
            return z ^ (z >> 31);
        }
    }

    /// <summary>The next 64 random bits.</summary>
    public ulong NextBits()
    {
        unchecked
        {
            var result = ulong.RotateLeft(_s1 * 5, 7) * 9;
            var t = _s1 << 17;
            _s2 ^= _s0;
            _s3 ^= _s1;
            _s1 ^= _s2;
            _s0 ^= _s3;
            _s2 ^= t;
            _s3 = ulong.RotateLeft(_s3, 45);
            return result;
        }
    }

    /// <summary>Uniform from 0 to below 1, 53 bits.</summary>
    public double Uniform() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>Uniform between two bounds.</summary>
    public double Uniform(double low, double high) => low + (high - low) * Uniform();

    /// <summary>A whole number from 0 to below <paramref name="count"/>.</summary>
    public int Below(int count) => (int)(Uniform() * count);

    /// <summary>True with the given probability.</summary>
    public bool Chance(double probability) => Uniform() < probability;

    /// <summary>Normally distributed (Marsaglia's polar method).</summary>
    /// <param name="mean">Mean.</param>
    /// <param name="deviation">Standard deviation.</param>
    public double Normal(double mean = 0, double deviation = 1)
    {
        if (!double.IsNaN(_spare))
        {
            var kept = _spare;
            _spare = double.NaN;
            return mean + deviation * kept;
        }

        double u, v, s;
        do
        {
            u = Uniform(-1, 1);
            v = Uniform(-1, 1);
            s = u * u + v * v;
        }
        while (s >= 1 || s == 0);
        var scale = Math.Sqrt(-2 * Math.Log(s) / s);
        _spare = v * scale;
        return mean + deviation * u * scale;
    }

    /// <summary>Normally distributed, drawn again until it falls between two bounds.</summary>
    public double Normal(double mean, double deviation, double low, double high)
    {
        while (true)
        {
            var value = Normal(mean, deviation);
            if (value >= low && value <= high)
                return value;
        }
    }

    /// <summary>
    /// Student's t scaled to unit variance: as wide as a normal, with heavier tails.
    /// </summary>
    /// <param name="degrees">Degrees of freedom, 3 or more.</param>
    public double HeavyTailed(int degrees)
    {
        double chiSquare = 0;
        var z = Normal();
        for (var i = 0; i < degrees; i++)
        {
            var x = Normal();
            chiSquare += x * x;
        }

        return z / Math.Sqrt(chiSquare / degrees) * Math.Sqrt((degrees - 2.0) / degrees);
    }

    /// <summary>Exponentially distributed.</summary>
    /// <param name="mean">Mean.</param>
    public double Exponential(double mean) => -mean * Math.Log(1 - Uniform());
}
