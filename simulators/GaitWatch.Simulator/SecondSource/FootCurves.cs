namespace GaitWatch.Simulator;

/// <summary>
/// A foot's force over its stance with a mean of 1. Fore feet: a beta curve u^a (1 - u)^b, one peak at a / (a + b). Hind feet: two
/// raised cosines that overlap in the middle, the second the smaller. Both set on over the first hundredths of the stance.
/// (One peak about half way in front, two at about 1/4 and 3/4 behind: Scott G.B. 1988, Vet Rec 123:245-248.)
/// </summary>
internal sealed class FootCurves
{
    private const int Grid = 400;
    private readonly Func<double, double> _raw;
    private readonly double _onset, _mean;

    private FootCurves(Func<double, double> raw, double onset)
    {
        (_raw, _onset, _mean) = (raw, onset, 1);
        _mean = Enumerable.Range(0, Grid).Average(k => At((k + 0.5) / Grid));
    }

    /// <summary>A curve of one peak.</summary>
    public static FootCurves Fore(SeededRandom random)
    {
        var rise = random.Uniform(0.6, 0.95);
        var fall = rise * random.Uniform(0.85, 1.15);
        return new(u => Math.Pow(u, rise) * Math.Pow(1 - u, fall), random.Uniform(0.008, 0.025));
    }

    /// <summary>A curve of two peaks.</summary>
    public static FootCurves Hind(SeededRandom random)
    {
        var width = random.Uniform(0.38, 0.42);
        var (first, last) = (random.Uniform(0.255, 0.28), random.Uniform(0.72, 0.745));
        var second = random.Uniform(0.90, 0.98);
        return new(u => Hump((u - first) / width) + (second * Hump((u - last) / width)), random.Uniform(0.008, 0.025));
    }

    private static double Hump(double at) => Math.Abs(at) < 1 ? 0.5 * (1 + Math.Cos(Math.PI * at)) : 0;

    /// <summary>A trotting foot: a plain half sine.</summary>
    public static FootCurves Bounce() => new(u => Math.Sin(Math.PI * u), 0.005);

    public double At(double u)
    {
        if (u is <= 0 or >= 1)
            return 0;
        return _raw(u) * (1 - Math.Exp(-u / _onset)) * (1 - Math.Exp((u - 1) / _onset)) / _mean;
    }
}
