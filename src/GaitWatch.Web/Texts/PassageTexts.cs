using GaitWatch.Gait;

namespace GaitWatch.Web;

/// <summary>Words about passages.</summary>
internal static class PassageTexts
{
    private static readonly Words s_words = new("Passage");

    public static string Used => s_words.Text();

    /// <summary>Why a passage was not used.</summary>
    public static string Reason(QualityReason reason) => s_words.Text($"Reason.{QualityReasons.WireName(reason)}");

    public static string Reasons(IEnumerable<string> wireNames) =>
        string.Join("; ", wireNames.Select(name => QualityReasons.TryParseWireName(name, out var reason) ? Reason(reason) : name));

    public static string NoneOf => s_words.Text();

    public static string NoneOfMeaning => s_words.Text();

    public static string Nobody => s_words.Text();

    public static string Curves => s_words.Text();

    public static string NoCurves => s_words.Text();

    public static string HowToRead => s_words.Text();

    public static string Legs => s_words.Text();

    public static string Title(string when) => s_words.With([when]);

    /// <summary>A word beside or above a figure.</summary>
    public static string Name(string what) => s_words.Text($"Name.{what}");

    public static string CurveOf(string leg, string unit) => s_words.With([leg, unit]);

    public static string Reading(double seconds, double kg) => s_words.With([Figures.Seconds(seconds), Figures.Weight(kg)]);

    /// <summary>A leg's share with how sure it is.</summary>
    public static string Share(LegLoad load) => load is { Share: { } share, ShareError: { } error }
        ? s_words.With([Figures.Share(share), Figures.ShareError(error)], "ShareWithError")
        : load.Share is { } alone ? Figures.Share(alone) : "–";

    public static string NotUsed(IEnumerable<string> wireNames) => s_words.With([Reasons(wireNames)]);
}
