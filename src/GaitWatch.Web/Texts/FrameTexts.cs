namespace GaitWatch.Web;

/// <summary>Words around every page.</summary>
internal static class FrameTexts
{
    private static readonly Words s_words = new("Frame");

    public static string Skip => s_words.Text();

    public static string Pages => s_words.Text();

    public static string Language => s_words.Text();

    public static string Weights => s_words.Text();

    public static string Back => s_words.Text();

    public static string TryAgain => s_words.Text();

    public static string Entry(string name) => s_words.Text($"Entry.{name}");

    public static string UpTo => s_words.Text();

    public static string NoSuchPage => s_words.Text();

    public static string NothingAt(string path) => s_words.With([path]);
}
