namespace GaitWatch.Web;

/// <summary>
/// Finds room for a chart's words, one after the other: each goes where it is wanted if nothing stands there, else to the other side of what it names, else to another
/// height; where no place is free it is left out, for a word over another tells nothing, and the list below the charts has all of them.
/// </summary>
/// <param name="left">Left edge of the chart.</param>
/// <param name="right">Right edge.</param>
internal sealed class LabelPlaces(double left, double right)
{
    private const double Beside = 4;

    private readonly List<ChartLabel> _placed = [];

    /// <summary>Places a word beside a line; null when there is no room.</summary>
    /// <param name="text">The word.</param>
    /// <param name="x">Where the line is.</param>
    /// <param name="heights">Baselines it may have, the one it had best first.</param>
    public ChartLabel? Place(string text, double x, params ReadOnlySpan<double> heights)
    {
        var isPastMiddle = x > (left + right) / 2;
        foreach (var y in heights)
        {
            foreach (var isLeftOf in (ReadOnlySpan<bool>)[isPastMiddle, !isPastMiddle])
            {
                var label = new ChartLabel(text, isLeftOf ? x - Beside : x + Beside, y, isLeftOf);
                if (label.From < left || label.To > right || _placed.Exists(label.Meets))
                    continue;
                _placed.Add(label);
                return label;
            }
        }

        return null;
    }
}
