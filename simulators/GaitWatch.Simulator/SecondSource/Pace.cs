namespace GaitWatch.Simulator;

/// <summary>How a body moves on over time: its place and the strides it has done, both found by stepping through time.</summary>
internal sealed class Pace
{
    private const double StepSeconds = 0.004;

    /// <summary>So far before and beyond the plates the walk is laid, metres: some strides each way, so that every foot that can meet them is laid.</summary>
    private const double BeyondMetres = 8;

    private readonly List<double> _x = [], _strides = [];

    /// <param name="speedAt">Speed at a place, m/s, above 0.</param>
    /// <param name="strideSecondsAt">Stride time at a speed, s.</param>
    /// <param name="plateLength">Length of the plates, m.</param>
    /// <param name="startStrides">Part of a stride done at the beginning, 0 to 1.</param>
    public Pace(Func<double, double> speedAt, Func<double, double> strideSecondsAt, double plateLength, double startStrides)
    {
        var (x, strides) = (-BeyondMetres, startStrides);
        while (x < plateLength + BeyondMetres)
        {
            _x.Add(x);
            _strides.Add(strides);
            var speed = speedAt(x);
            var middle = speedAt(x + (0.5 * StepSeconds * speed));
            x += StepSeconds * middle;
            strides += StepSeconds / strideSecondsAt(middle);
        }
    }

    /// <summary>Strides done at the end.</summary>
    public double LastStrides => _strides[^1];

    /// <summary>When so many strides were done, s.</summary>
    public double SecondsAt(double strides)
    {
        var at = _strides.BinarySearch(strides);
        if (at >= 0)
            return at * StepSeconds;
        var after = Math.Clamp(~at, 1, _strides.Count - 1);
        return (after - 1 + ((strides - _strides[after - 1]) / (_strides[after] - _strides[after - 1]))) * StepSeconds;
    }

    /// <summary>Where the middle of her fore feet is, m from the entry edge.</summary>
    public double XAt(double seconds) => Between(_x, seconds);

    /// <summary>Strides done.</summary>
    public double StridesAt(double seconds) => Between(_strides, seconds);

    /// <summary>Seconds that the stride around a moment takes.</summary>
    public double StrideSecondsAround(double strides) => SecondsAt(strides + 0.5) - SecondsAt(strides - 0.5);

    /// <summary>Acceleration around a moment, m/s2.</summary>
    public double AccelerationAt(double seconds) => (XAt(seconds + 0.2) - (2 * XAt(seconds)) + XAt(seconds - 0.2)) / 0.04;

    private static double Between(List<double> values, double seconds)
    {
        var at = seconds / StepSeconds;
        var before = Math.Clamp((int)Math.Floor(at), 0, values.Count - 2);
        return values[before] + ((at - before) * (values[before + 1] - values[before]));
    }
}
