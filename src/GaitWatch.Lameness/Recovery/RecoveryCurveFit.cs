using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace GaitWatch.Lameness;

/// <summary>
/// Robust fit of d(t) = dInf + (d0 - dInf) exp(-t / tau). For a given tau the curve is linear in d0 and dInf; these are found by
/// Huber's estimator, iteratively reweighted (Huber P.J. 1964, Ann Math Stat 35:73-101), and tau by a search along the profile
/// (variable projection: Golub G.H., Pereyra V. 1973, SIAM J Numer Anal 10:413-432). Every parameter is bounded, and the same
/// days always give the same curve.
/// </summary>
public static class RecoveryCurveFit
{
    /// <summary>Huber's constant for 95 % efficiency on normal data, in standard deviations (Huber 1964).</summary>
    public const double HuberConstant = 1.345;

    /// <summary>Shortest tau, days: what heals faster is done before it can be seen.</summary>
    public const double ShortestTauDays = 1;

    /// <summary>Longest tau, days: what heals slower cannot be told from standing still within a follow-up.</summary>
    public const double LongestTauDays = 60;

    /// <summary>Fewest days from which a curve of three parameters is told.</summary>
    public const int FewestDays = 5;

    // A leg carries at most a little more than its normal in the end, and never less than nothing.
    private static readonly (double Low, double High) EndBounds = (-5, 100);
    private static readonly (double Low, double High) StartBounds = (-20, 100);

    /// <summary>The curve; null for fewer than <see cref="FewestDays"/> days.</summary>
    /// <param name="days">Days since treatment.</param>
    /// <param name="drops">Drops, per cent, one for each.</param>
    /// <param name="sd">Standard deviation of a daily mean around its curve, per cent; sets what counts as an outlier.</param>
    /// <exception cref="ArgumentException">The two differ in length, or the deviation is not above 0.</exception>
    public static FittedRecovery? Of(IReadOnlyList<double> days, IReadOnlyList<double> drops, double sd)
    {
        if (days.Count != drops.Count)
            throw new ArgumentException($"There are {days.Count} days and {drops.Count} drops: one drop for each day.", nameof(drops));
        if (!(sd > 0))
            throw new ArgumentException($"sd is {sd}: a standard deviation above 0 per cent.", nameof(sd));
        if (days.Count < FewestDays)
            return null;
        var (t, d) = (days.ToArray(), drops.ToArray());
        var tau = BestTau(tau => Linear(t, d, tau, sd).Loss);
        var fit = Linear(t, d, tau, sd);
        return Described(new RecoveryCurve(fit.Start, fit.End, tau), fit.Weights, t, d, sd);
    }

    /// <summary>Derivatives of the curve by d0, dInf, tau.</summary>
    internal static double[] Gradient(RecoveryCurve curve, double t)
    {
        var decay = Math.Exp(-t / curve.TauDays);
        return [decay, 1 - decay, (curve.StartPercent - curve.EndPercent) * decay * t / (curve.TauDays * curve.TauDays)];
    }

    private static double BestTau(Func<double, double> loss)
    {
        const int Steps = 40;
        var width = Math.Log(LongestTauDays / ShortestTauDays) / Steps;
        double TauAt(double step) => ShortestTauDays * Math.Exp(Math.Clamp(step, 0, Steps) * width);
        var best = Enumerable.Range(0, Steps + 1).MinBy(step => loss(TauAt(step)));

        // Golden section between the neighbours of the best step.
        var golden = (Math.Sqrt(5) - 1) / 2;
        double low = Math.Max(best - 1, 0), high = Math.Min(best + 1, Steps);
        while (high - low > 1e-9)
        {
            var (left, right) = (high - golden * (high - low), low + golden * (high - low));
            if (loss(TauAt(left)) <= loss(TauAt(right)))
                high = right;
            else
                low = left;
        }

        // The bound itself, where the search has run into it.
        var found = (low + high) / 2;
        return TauAt(found < 1e-6 ? 0 : found > Steps - 1e-6 ? Steps : found);
    }

    private static (double Start, double End, double[] Weights, double Loss) Linear(double[] t, double[] d, double tau, double sd)
    {
        var decay = Array.ConvertAll(t, value => Math.Exp(-value / tau));
        var weights = new double[t.Length];
        Array.Fill(weights, 1);
        double start = 0, end = 0;
        for (var iteration = 0; iteration < 200; iteration++)
        {
            var (nextStart, nextEnd) = Weighted(decay, d, weights);
            var moved = Math.Abs(nextStart - start) + Math.Abs(nextEnd - end);
            (start, end) = (nextStart, nextEnd);
            for (var i = 0; i < d.Length; i++)
            {
                var residual = Math.Abs(d[i] - end - (start - end) * decay[i]);
                weights[i] = residual <= HuberConstant * sd ? 1 : HuberConstant * sd / residual;
            }

            if (moved < 1e-12)
                break;
        }

        double loss = 0;
        for (var i = 0; i < d.Length; i++)
        {
            var scaled = Math.Abs(d[i] - end - (start - end) * decay[i]) / (HuberConstant * sd);
            loss += scaled <= 1 ? scaled * scaled : 2 * scaled - 1;
        }

        return (start, end, weights, loss);
    }

    // Weighted least squares of d = start e + end (1 - e) within the bounds: where one runs into its bound it is held there and
    // the other found anew.
    private static (double Start, double End) Weighted(double[] decay, double[] d, double[] weights)
    {
        double aa = 0, ab = 0, bb = 0, ad = 0, bd = 0;
        for (var i = 0; i < d.Length; i++)
        {
            var (a, b, w) = (decay[i], 1 - decay[i], weights[i]);
            aa += w * a * a;
            ab += w * a * b;
            bb += w * b * b;
            ad += w * a * d[i];
            bd += w * b * d[i];
        }

        var determinant = aa * bb - ab * ab;
        // Days all alike tell one level: a flat curve.
        if (determinant <= 1e-12 * aa * bb)
        {
            var level = Math.Clamp((ad + bd) / (aa + 2 * ab + bb), EndBounds.Low, EndBounds.High);
            return (level, level);
        }

        var (start, end) = ((ad * bb - bd * ab) / determinant, (aa * bd - ab * ad) / determinant);
        if (end < EndBounds.Low || end > EndBounds.High)
        {
            end = Math.Clamp(end, EndBounds.Low, EndBounds.High);
            start = (ad - ab * end) / aa;
        }

        if (start < StartBounds.Low || start > StartBounds.High)
        {
            start = Math.Clamp(start, StartBounds.Low, StartBounds.High);
            end = Math.Clamp((bd - ab * start) / bb, EndBounds.Low, EndBounds.High);
        }

        return (start, end);
    }

    private static FittedRecovery Described(RecoveryCurve curve, double[] weights, double[] t, double[] d, double sd)
    {
        // Free parameters: those not held at a bound. A flat curve has no tau.
        var free = new List<int>();
        if (curve.StartPercent > StartBounds.Low && curve.StartPercent < StartBounds.High)
            free.Add(0);
        if (curve.EndPercent > EndBounds.Low && curve.EndPercent < EndBounds.High)
            free.Add(1);
        if (curve.TauDays > ShortestTauDays && curve.TauDays < LongestTauDays && Math.Abs(curve.StartPercent - curve.EndPercent) > 1e-6)
            free.Add(2);
        if (free.Count == 0)
            free.Add(1);

        var freedom = Math.Max(t.Length - free.Count, 1);
        var residual = Math.Sqrt(t.Select((time, i) => weights[i] * Math.Pow(d[i] - curve.At(time), 2)).Sum() / freedom);
        // The larger of what she does when sound and what is seen now: neither luck nor a bad model makes an interval narrow.
        var scale = Math.Max(sd, residual);
        var information = Matrix<double>.Build.Dense(free.Count, free.Count, (row, column) =>
            t.Select((time, i) => weights[i] * Gradient(curve, time)[free[row]] * Gradient(curve, time)[free[column]]).Sum());
        var inverse = information.PseudoInverse();
        var covariance = new double[3][];
        for (var i = 0; i < 3; i++)
        {
            covariance[i] = new double[3];
            for (var j = 0; j < 3; j++)
            {
                var (row, column) = (free.IndexOf(i), free.IndexOf(j));
                covariance[i][j] = row < 0 || column < 0 ? 0 : scale * scale * inverse[row, column];
            }
        }

        var quantile = StudentT.InvCDF(0, 1, freedom, 0.975);
        var amplitudeError = Math.Sqrt(Math.Max(covariance[0][0] + covariance[1][1] - 2 * covariance[0][1], 0));
        var hasShape = free.Contains(2) && Math.Abs(curve.StartPercent - curve.EndPercent) > quantile * amplitudeError;
        return new FittedRecovery(curve, hasShape, covariance, quantile);
    }
}
