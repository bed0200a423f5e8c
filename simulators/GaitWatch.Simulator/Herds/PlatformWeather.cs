namespace GaitWatch.Simulator;

/// <summary>What befalls all cows alike on a day: the platform's drift and faults, a wet floor.</summary>
internal sealed class PlatformWeather
{
    private readonly HerdSpec _spec;
    private readonly double[] _drift;
    private readonly bool[] _wet;

    public PlatformWeather(HerdSpec spec)
    {
        _spec = spec;
        var random = new SeededRandom(spec.Seed, 30);
        _drift = new double[spec.Days + 1];
        _wet = new bool[spec.Days + 1];
        // Wanders back to nothing within about a month (first-order autoregression).
        const double keep = 1 - 1 / 30.0;
        var drift = spec.PlatformDrift * random.Normal();
        for (var day = 0; day < _drift.Length; day++)
        {
            _drift[day] = drift;
            drift = keep * drift + spec.PlatformDrift * Math.Sqrt(1 - keep * keep) * random.Normal();
            _wet[day] = random.Chance(spec.WetDays);
        }
    }

    /// <summary>Everybody's scatter on a day over a dry day's.</summary>
    public double NoiseOn(int day) => _wet[day] ? 1.4 : 1;

    /// <summary>On a wet floor cows bring their weight a little to the fore: log-ratio of fore to hind pair (invented).</summary>
    public double ForeHindOn(int day) => _wet[day] ? 0.015 : 0;

    /// <summary>What each plate reads for a load of 1.</summary>
    public (double Left, double Right) GainsOn(int day)
    {
        var (left, right) = (Math.Exp(0.5 * _drift[day]), Math.Exp(-0.5 * _drift[day]));
        foreach (var fault in _spec.PlatformFaults)
        {
            if (day < fault.FirstDay || day >= fault.FirstDay + fault.Days)
                continue;
            if (fault.IsLeft)
                left *= 1 - fault.Loss;
            else
                right *= 1 - fault.Loss;
        }

        return (left, right);
    }
}
