namespace GaitWatch.Simulator;

/// <summary>
/// How a foot's vertical force runs over its stance, from 0 through its peaks to 0, with a mean of 1:
/// sin(pi u) + Flatness sin(3 pi u) + Lean sin(2 pi u), eased in and out over a few per cent of the stance so that its slope starts
/// from nothing. With Flatness below 1/9 the curve has one peak, about the middle: a fore foot. Above, it has two, where
/// cos^2(pi u) = (9 Flatness - 1) / (12 Flatness), which 0.23 to 0.3 puts at about 1/4 and 3/4; a positive Lean makes the second the
/// smaller: a hind foot. That these are the shapes of cattle: Scott G.B. 1988, Vet Rec 123:245-248.
/// </summary>
internal sealed class ForceShape
{
    private const int Steps = 2000;
    private readonly double _flatness, _lean, _ease, _mean;

    public ForceShape(double flatness, double lean, double ease = 0.03)
    {
        (_flatness, _lean, _ease, _mean) = (flatness, lean, ease, 1);
        double sum = 0, peak = 0;
        for (var i = 1; i < Steps; i++)
        {
            var value = At((double)i / Steps);
            sum += value;
            peak = Math.Max(peak, value);
        }

        _mean = sum / Steps;
        Peak = peak / _mean;
    }

    /// <summary>Highest value; the mean is 1.</summary>
    public double Peak { get; }

    /// <summary>Value at the stance fraction <paramref name="u"/>; 0 outside 0 to 1.</summary>
    public double At(double u)
    {
        if (u <= 0 || u >= 1)
            return 0;
        var sin = Math.Sin(Math.PI * u);
        var cos = Math.Cos(Math.PI * u);
        // sin 3a = 3 sin a - 4 sin^3 a; sin 2a = 2 sin a cos a
        var value = sin + _flatness * (3 * sin - 4 * sin * sin * sin) + 2 * _lean * sin * cos;
        var edge = Math.Min(u, 1 - u);
        if (edge < _ease)
        {
            var s = Math.Sin(0.5 * Math.PI * edge / _ease);
            value *= s * s;
        }

        return value / _mean;
    }
}
