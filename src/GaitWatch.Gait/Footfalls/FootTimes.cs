namespace GaitWatch.Gait;

/// <summary>Tells when a foot came down or left from the course of its force.</summary>
internal static class FootTimes
{
    /// <summary>
    /// The lower and the upper mark on a rising force, as parts of the plate's highest load: above noise and ringing, below where
    /// the curve bends.
    /// </summary>
    private const double LowerMark = 0.015;
    private const double UpperMark = 0.06;

    /// <summary>Marks are never below this, kg.</summary>
    private const double LeastMarkKg = 2;

    /// <summary>
    /// How far before the lower mark the force began, in units of the way from the lower to the upper, less what the low-pass smears even a
    /// step by. Unsmeared it were 1/3 for a force that rises straight from its beginning, 1 for one that rises with its square: feet land
    /// between the two. Both figures are least squares over simulated contacts and lifts of two sources.
    /// </summary>
    private const double Reach = 0.735;
    private const double SmearSeconds = 0.0049;

    private const double LongestWaySeconds = 0.05;

    /// <summary>The beginning of a rise, going back from a sample well inside it.</summary>
    /// <param name="force">Force at a sample, kg.</param>
    /// <param name="inside">A sample inside the stance.</param>
    /// <param name="outermost">Do not look beyond this sample; may lie on either side of <paramref name="inside"/>, which gives the direction.</param>
    /// <param name="highest">The plate's highest load, kg.</param>
    /// <param name="hz">Samples a second.</param>
    /// <returns>The broken sample; null when the force does not fall below the marks on the way.</returns>
    public static double? Edge(Func<int, double> force, int inside, int outermost, double highest, double hz)
    {
        var lower = Math.Max(LeastMarkKg, LowerMark * highest);
        var upper = Math.Max(3 * LeastMarkKg, UpperMark * highest);
        var step = outermost < inside ? -1 : 1;
        double? atUpper = null;
        var last = force(inside);
        for (var i = inside + step; i != outermost + step; i += step)
        {
            var next = force(i);
            if (atUpper is null && next < upper)
                atUpper = i - (step * Part(next, last, upper));
            if (next < lower)
            {
                var atLower = i - (step * Part(next, last, lower));
                // A force that lingers between the marks tells nothing of its slope.
                var way = Math.Min(Math.Abs(atLower - (atUpper ?? atLower)), LongestWaySeconds * hz);
                return atLower + (step * ((Reach * way) - (SmearSeconds * hz)));
            }

            last = next;
        }

        return null;
    }

    private static double Part(double below, double above, double mark) =>
        above > below ? Math.Clamp((mark - below) / (above - below), 0, 1) : 0;
}
