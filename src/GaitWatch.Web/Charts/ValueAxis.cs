namespace GaitWatch.Web;

/// <summary>Values up a chart.</summary>
/// <param name="Low">Value at the bottom.</param>
/// <param name="High">Value at the top.</param>
/// <param name="Bottom">Where the bottom is, chart units; larger than <paramref name="Top"/>.</param>
/// <param name="Top">Where the top is, chart units.</param>
public sealed record ValueAxis(double Low, double High, double Bottom, double Top)
{
    private static readonly double[] NiceSteps = [0.002, 0.005, 0.01, 0.02, 0.05, 0.1, 0.2];

    /// <summary>A value's place; values beyond the ends lie on the ends.</summary>
    public double At(double value) => Bottom - ((Math.Clamp(value, Low, High) - Low) / (High - Low) * (Bottom - Top));

    /// <summary>Round values to name, three or four.</summary>
    public IEnumerable<double> Ticks()
    {
        var step = NiceSteps.FirstOrDefault(nice => (High - Low) / nice <= 4.5, NiceSteps[^1]);
        for (var i = (int)Math.Ceiling(Low / step); i * step <= High; i++)
            yield return i * step;
    }

    /// <summary>
    /// Axes for several series: each around its own middle, all of the same height, so that a drop looks alike on every leg.
    /// </summary>
    public static IReadOnlyList<ValueAxis> Alike(IEnumerable<IReadOnlyCollection<double>> series, double bottom, double top)
    {
        // Less than this is noise and should look so: two percentage points of share.
        const double least = 0.02;
        const double margin = 1.1;
        var ranges = series.Select(values => values.Count == 0 ? (Low: 0.24, High: 0.26) : (Low: values.Min(), High: values.Max())).ToArray();
        var half = margin * Math.Max(least, ranges.Max(range => range.High - range.Low)) / 2;
        return [.. ranges.Select(range => new ValueAxis(((range.Low + range.High) / 2) - half, ((range.Low + range.High) / 2) + half, bottom, top))];
    }
}
