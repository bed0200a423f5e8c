namespace GaitWatch.Web;

/// <summary>
/// Leaves out points of a line that nobody would miss. Source of the method: Douglas and Peucker 1973, by which every point left out
/// lies within the tolerance of the line that is left.
/// </summary>
internal static class Thinned
{
    /// <summary>The points that are needed, in their order; the first and the last always are.</summary>
    /// <param name="points">A line from left to right, or from right to left.</param>
    /// <param name="tolerance">How far above or below the drawn line a point left out may lie, chart units.</param>
    public static IReadOnlyList<(double X, double Y)> Line((double X, double Y)[] points, double tolerance)
    {
        if (points.Length <= 2)
            return points;
        var needed = new bool[points.Length];
        needed[0] = needed[^1] = true;
        var stretches = new Stack<(int From, int To)>([(0, points.Length - 1)]);
        while (stretches.TryPop(out var stretch))
        {
            var (worst, at) = (tolerance, -1);
            var (from, to) = (points[stretch.From], points[stretch.To]);
            for (var i = stretch.From + 1; i < stretch.To; i++)
            {
                var miss = Math.Abs(points[i].Y - from.Y - ((to.Y - from.Y) * (points[i].X - from.X) / (to.X - from.X)));
                if (miss > worst)
                    (worst, at) = (miss, i);
            }

            if (at < 0)
                continue;
            needed[at] = true;
            stretches.Push((stretch.From, at));
            stretches.Push((at, stretch.To));
        }

        return [.. points.Where((_, i) => needed[i])];
    }
}
