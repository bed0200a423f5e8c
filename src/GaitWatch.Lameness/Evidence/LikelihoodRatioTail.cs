using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness;

/// <summary>
/// Distribution, on a sound cow, of one passage's log likelihood ratio for a change of a given size in standard deviations, when surprises
/// follow a t distribution of three dimensions.
/// </summary>
/// <remarks>
/// With X along the change and R across it, both in standard deviations, the ratio is below a value inside (or outside) a sphere. Given X, R squared over
/// (dof + X squared) has the survival function (1 + s)^(-(dof + 1) / 2) (Kotz S., Nadarajah S. 2004, Multivariate t Distributions, section 1.11), so one sum over X is left.
/// </remarks>
internal sealed class LikelihoodRatioTail
{
    /// <summary>Trapezoids in u over X = sinh u: fine in the middle, and far into the tails, where false alarms come from.</summary>
    private const int Points = 640;
    private const double Reach = 9;

    private readonly double _tails;
    private readonly double[] _along = new double[Points];
    private readonly double[] _weight = new double[Points];

    public LikelihoodRatioTail(double tails)
    {
        _tails = tails;
        var sum = 0.0;
        for (var i = 0; i < Points; i++)
        {
            var u = Reach * ((2 * (i + 0.5) / Points) - 1);
            _along[i] = Math.Sinh(u);
            _weight[i] = StudentT.PDF(0, 1, tails, _along[i]) * Math.Cosh(u);
            sum += _weight[i];
        }

        for (var i = 0; i < Points; i++)
            _weight[i] /= sum;
    }

    /// <summary>Probability that the log likelihood ratio of a change of <paramref name="size"/> standard deviations is at most <paramref name="value"/>.</summary>
    public double Cdf(double size, double value)
    {
        // Heavy tails bound the ratio, whatever is seen.
        var most = (_tails + 3) * Math.Asinh(size / (2 * Math.Sqrt(_tails)));
        if (Math.Abs(value) >= most)
            return value > 0 ? 1 : 0;
        var c = Math.Exp(2 * value / (_tails + 3));
        var e = 1 - c;
        if (Math.Abs(e) < 1e-12)
            return StudentT.CDF(0, 1, _tails, size / 2);
        var sum = 0.0;
        for (var i = 0; i < Points; i++)
        {
            var x = _along[i];
            var edge = -_tails + (c * size * ((size - (2 * x)) / e)) - (x * x);
            var beyond = edge <= 0 ? 1 : Math.Pow(1 + (edge / (_tails + (x * x))), -(_tails + 1) / 2);
            sum += _weight[i] * (e < 0 ? beyond : 1 - beyond);
        }

        return sum;
    }
}
