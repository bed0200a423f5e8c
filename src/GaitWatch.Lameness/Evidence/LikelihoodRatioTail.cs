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
    private const int Points = 300;
    private readonly double _tails;
    private readonly double[] _along = new double[Points];

    public LikelihoodRatioTail(double tails)
    {
        _tails = tails;
        for (var i = 0; i < Points / 2; i++)
        {
            _along[i] = StudentT.InvCDF(0, 1, tails, (i + 0.5) / Points);
            _along[Points - 1 - i] = -_along[i];
        }
    }

    /// <summary>Probability that the log likelihood ratio of a change of <paramref name="size"/> standard deviations is at most <paramref name="value"/>.</summary>
    public double Cdf(double size, double value)
    {
        var c = Math.Exp(2 * value / (_tails + 3));
        var e = 1 - c;
        var sum = 0.0;
        foreach (var x in _along)
        {
            if (Math.Abs(e) < 1e-12)
            {
                sum += x <= size / 2 ? 1 : 0;
                continue;
            }

            var edge = -_tails + (c * size * ((size - (2 * x)) / e)) - (x * x);
            var beyond = edge <= 0 ? 1 : Math.Pow(1 + (edge / (_tails + (x * x))), -(_tails + 1) / 2);
            sum += e < 0 ? beyond : 1 - beyond;
        }

        return sum / Points;
    }
}
