using GaitWatch.Gait;

namespace GaitWatch.Web;

/// <summary>Words on and about charts.</summary>
internal static class ChartTexts
{
    private static readonly Words s_words = new("Chart");

    public static string EvidenceLine => s_words.Text();

    public static string Flagged => s_words.Text();

    public static string Mark(ChartMarkKind kind) => s_words.Text($"Mark.{kind}");

    public static string Description(Leg leg, string first, string last, string newest) => s_words.With([LegTexts.Of(leg), first, last, newest]);

    /// <summary>How the script says a day: {0} the day, {1} the share.</summary>
    public static string DayPattern => s_words.With(["{0}", $"{{1}}{Figures.Space}%"], "Day");

    /// <summary>How it says the limits of normal.</summary>
    public static string NormalPattern => s_words.With(["{0}", $"{{1}}{Figures.Space}%"], "Normal");

    /// <summary>How it says the evidence.</summary>
    public static string EvidencePattern => s_words.With(["{0}"], "Evidence");

    /// <summary>A day of a leg, read off its chart.</summary>
    public static string Day(LegDay day, double spreads)
    {
        var words = s_words.With([FarmTimes.ShortDay(day.Day), Figures.Share(day.Share)]);
        if (day is { Normal: { } normal, Spread: { } spread })
            words += s_words.With([$"{100 * (normal - (spreads * spread)):0.0}", Figures.Share(normal + (spreads * spread))], "Normal");
        return words + s_words.With([Figures.Fraction(day.Evidence)], "Evidence");
    }
}
