namespace GaitWatch.Web;

/// <summary>A word beside something in a chart, where it fits.</summary>
/// <param name="Text">The word.</param>
/// <param name="X">Where it begins or ends, chart units.</param>
/// <param name="Y">Its baseline.</param>
/// <param name="IsLeftOf">Whether it ends there instead of beginning.</param>
public sealed record ChartLabel(string Text, double X, double Y, bool IsLeftOf)
{
    /// <summary>Widest that a bold letter is on average, and how high a line of them, chart units.</summary>
    private const double Letter = 7.6;
    private const double Line = 12;

    internal double From => IsLeftOf ? X - (Letter * Text.Length) : X;

    internal double To => IsLeftOf ? X : X + (Letter * Text.Length);

    internal bool Meets(ChartLabel other) => From < other.To && other.From < To && Math.Abs(Y - other.Y) < Line;
}
