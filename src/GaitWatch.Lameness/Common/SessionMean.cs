namespace GaitWatch.Lameness;

/// <summary>What one balance of the cows of a session has in common: a mean in which no single cow counts for more than a bounded part.</summary>
/// <remarks>
/// Huber P.J. 1964, Ann Math Stat 35:73-101. Some cows of every session are lame; a median would do as well against them and errs half as much again. Beside few cows none is
/// supposed, with the weight of <see cref="LeastWeight"/> cows, so that one cow more or less never moves it by more than a small part of a passage's scatter.
/// </remarks>
internal static class SessionMean
{
    /// <summary>Standard deviations beyond which a cow counts no more than at that distance.</summary>
    private const double Edge = 1;

    /// <summary>What is left of a normal sample's information with that edge.</summary>
    private const double Efficiency = 0.9;

    /// <summary>Cows, those of the session and supposed ones that did not move, that any movement rests on at least.</summary>
    private const double LeastWeight = 16;

    /// <summary>The solution is the same to so much, balances.</summary>
    private const double Exactness = 1e-8;
    private const int NewtonSteps = 8;
    private const int MostSteps = 30;

    /// <summary>The mean by the session alone, and its variance.</summary>
    /// <param name="residuals">The session's residuals; at least one.</param>
    /// <param name="of">Value and variance of the balance asked for.</param>
    public static (double Value, double Variance) Of(List<Residual> residuals, Func<Residual, (double Value, double Variance)> of) => Solve(residuals, of, 0, 0);

    /// <summary>The mean and its variance when sessions differ by a given variance and single cows must not move it much.</summary>
    public static (double Value, double Variance) Shrunk(List<Residual> residuals, Func<Residual, (double Value, double Variance)> of, double prior) =>
        Solve(residuals, of, 1 / prior, LeastWeight);

    private static (double Value, double Variance) Solve(
        List<Residual> residuals, Func<Residual, (double Value, double Variance)> of, double priorWeight, double leastWeight)
    {
        var count = residuals.Count;
        if (count == 0)
            return (0, 1 / priorWeight);
        Span<double> value = stackalloc double[count];
        Span<double> root = stackalloc double[count];
        var usual = 0.0;
        for (var i = 0; i < count; i++)
        {
            (value[i], root[i]) = of(residuals[i]);
            usual += root[i] / count;
        }

        var information = 0.0;
        for (var i = 0; i < count; i++)
        {
            // An even-tempered cow counts no more than a usual one: else she alone would move the others.
            root[i] = 1 / Math.Sqrt(Math.Max(root[i], usual));
            information += root[i] * root[i];
        }

        var bounded = Math.Max(priorWeight, leastWeight == 0 ? 0 : (leastWeight - count) / usual);
        var mean = 0.0;
        for (var step = 0; step < MostSteps; step++)
        {
            // Newton's step: what lies beyond the edge pulls with the edge's force and holds nothing.
            var (pull, held, all) = (-bounded * mean, bounded, bounded);
            for (var i = 0; i < count; i++)
            {
                var far = (value[i] - mean) * root[i];
                var isFar = Math.Abs(far) > Edge;
                pull += root[i] * (isFar ? Math.CopySign(Edge, far) : far);
                held += isFar ? 0 : root[i] * root[i];
                all += root[i] * root[i] * (isFar ? Edge / Math.Abs(far) : 1);
            }

            // Where that may swing to and fro, the shorter step of reweighting.
            var move = pull / (step < NewtonSteps && held > 0.25 * all ? held : all);
            mean += move;
            if (Math.Abs(move) < Exactness)
                break;
        }

        return (mean, 1 / ((Efficiency * information) + priorWeight));
    }
}
