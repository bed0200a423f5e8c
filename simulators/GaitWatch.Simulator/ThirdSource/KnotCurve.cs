namespace GaitWatch.Simulator;

/// <summary>
/// A smooth curve through given points that goes up and down only where they do: cubic pieces whose slope at a point is the weighted harmonic
/// mean of the slopes beside it, and none at a peak (Fritsch F.N., Butland J. 1984, SIAM J Sci Stat Comput 5:300-304).
/// </summary>
internal sealed class KnotCurve
{
    private readonly (double U, double Y)[] _knots;
    private readonly double[] _slopes;

    /// <param name="knots">Two points or more, <c>U</c> rising.</param>
    public KnotCurve(params (double U, double Y)[] knots)
    {
        _knots = knots;
        _slopes = new double[knots.Length];
        (_slopes[0], _slopes[^1]) = (Secant(0), Secant(knots.Length - 2));
        for (var k = 1; k + 1 < knots.Length; k++)
        {
            var (before, after) = (Secant(k - 1), Secant(k));
            if (before * after <= 0)
                continue;
            var (wide, next) = (Width(k - 1), Width(k));
            _slopes[k] = 3 * (wide + next) / (((wide + (2 * next)) / before) + (((2 * wide) + next) / after));
        }

        for (var k = 0; k + 1 < knots.Length; k++)
            Area += (0.5 * Width(k) * (knots[k].Y + knots[k + 1].Y)) + (Width(k) * Width(k) * (_slopes[k] - _slopes[k + 1]) / 12);
    }

    /// <summary>The area under it from the first point to the last.</summary>
    public double Area { get; }

    /// <summary>Its height; 0 outside the points.</summary>
    public double At(double u)
    {
        if (!(u >= _knots[0].U && u <= _knots[^1].U))
            return 0;
        var k = 0;
        while (k + 2 < _knots.Length && _knots[k + 1].U < u)
            k++;
        var (width, t) = (Width(k), (u - _knots[k].U) / Width(k));
        var rest = 1 - t;
        return (rest * rest * ((1 + (2 * t)) * _knots[k].Y + (t * width * _slopes[k]))) + (t * t * (((1 + (2 * rest)) * _knots[k + 1].Y) - (rest * width * _slopes[k + 1])));
    }

    private double Width(int k) => _knots[k + 1].U - _knots[k].U;

    private double Secant(int k) => (_knots[k + 1].Y - _knots[k].Y) / Width(k);
}
