using System.Collections.Immutable;

namespace GaitWatch.Web;

/// <summary>
/// When to call the veterinarian, and care at work. Common practice, no source: it points and does not diagnose; the farm's
/// veterinarian and local rules decide.
/// </summary>
internal static class CareTexts
{
    private static readonly Words s_words = new("Care");

    private static readonly ImmutableArray<string> s_signs =
        ["no-weight", "swollen-above", "swollen-between", "deep", "both-claws", "bleeding", "nothing-found", "no-better", "down"];

    public static string Heading => s_words.Text();

    public static string Intro => s_words.Text();

    public static IEnumerable<string> Signs => s_signs.Select(sign => s_words.Text($"Sign.{sign}"));

    public static string Outbreak => s_words.Text();

    public static string Limits => s_words.Text();

    public static string Handling => s_words.Text();
}
