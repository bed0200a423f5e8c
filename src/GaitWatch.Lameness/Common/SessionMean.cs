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
    /// <param name="values">The cows' residuals; at least one.</param>
    /// <param name="precisions">One over each one's standard deviation.</param>
    /// <param name="start">Where to look first.</param>
    public static (double Value, double Variance) Of(ReadOnlySpan<double> values, ReadOnlySpan<double> precisions, double start) =>
        Solve(values, precisions, 0, 0, start);

    /// <summary>The mean and its variance when sessions differ by a given variance and single cows must not move it much.</summary>
    /// <param name="values">The cows' residuals.</param>
    /// <param name="precisions">One over each one's standard deviation.</param>
    /// <param name="prior">Variance of what sessions have in common.</param>
    /// <param name="usual">Variance of a usual cow's residual.</param>
    /// <param name="start">Where to look first.</param>
    public static (double Value, double Variance) Shrunk(ReadOnlySpan<double> values, ReadOnlySpan<double> precisions, double prior, double usual, double start) =>
        values.IsEmpty ? (0, prior) : Solve(values, precisions, 1 / prior, Math.Max(1 / prior, (LeastWeight - values.Length) / usual), start);

    private static (double Value, double Variance) Solve(
        ReadOnlySpan<double> values, ReadOnlySpan<double> precisions, double priorWeight, double heldToNone, double start)
    {
        var mean = start;
        for (var step = 0; step < MostSteps; step++)
        {
            // Newton's step: what lies beyond the edge pulls with the edge's force and holds nothing.
            var (pull, held, inside) = (-heldToNone * mean, heldToNone, 0);
            for (var i = 0; i < values.Length; i++)
            {
                var precision = precisions[i];
                var far = (values[i] - mean) * precision;
                if (far is <= Edge and >= -Edge)
                {
                    pull += precision * far;
                    held += precision * precision;
                    inside++;
                }
                else
                {
                    pull += far > 0 ? precision * Edge : -precision * Edge;
                }
            }

            // Where that may swing to and fro, the shorter step of reweighting.
            if (step >= NewtonSteps || 4 * inside < values.Length)
                held = heldToNone + Reweighted(values, precisions, mean);
            var move = pull / held;
            mean += move;
            if (Math.Abs(move) < Exactness)
                break;
        }

        var information = 0.0;
        foreach (var precision in precisions)
            information += precision * precision;
        return (mean, 1 / ((Efficiency * information) + priorWeight));
    }

    private static double Reweighted(ReadOnlySpan<double> values, ReadOnlySpan<double> precisions, double mean)
    {
        var sum = 0.0;
        for (var i = 0; i < values.Length; i++)
            sum += precisions[i] * Math.Min(precisions[i], Edge / Math.Abs(values[i] - mean));
        return sum;
    }
}
