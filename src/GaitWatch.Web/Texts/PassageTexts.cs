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

    public static string NotUsed(IEnumerable<string> wireNames) => s_words.With([Reasons(wireNames)]);
}
