using GaitWatch.Gait;

namespace GaitWatch.Web;

/// <summary>The four legs in words.</summary>
internal static class LegTexts
{
    private static readonly Words s_words = new("Leg");

    /// <summary>Such as "right hind", within a sentence.</summary>
    public static string Of(Leg leg) => s_words.Text(leg.WireName());

    public static string Of(string wireName) => Legs.TryParseWireName(wireName, out var leg) ? Of(leg) : wireName;

    /// <summary>Such as "Right hind", first letter large.</summary>
    public static string Title(Leg leg) => Of(leg) is [var first, .. var rest] ? char.ToUpper(first, System.Globalization.CultureInfo.CurrentCulture) + rest : "";

    /// <summary>What the picture of the four feet shows.</summary>
    public static string Picture(IReadOnlyList<Leg> marked) => marked.Count == 0
        ? s_words.Text("Picture.none")
        : s_words.With([string.Join(s_words.Text("And"), marked.Select(Of))]);
}
