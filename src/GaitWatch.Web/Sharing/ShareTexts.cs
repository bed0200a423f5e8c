namespace GaitWatch.Web;

/// <summary>Words around share links.</summary>
internal static class ShareTexts
{
    private static readonly Words s_words = new("Share");

    public static string Title => s_words.Text();

    public static string Opens => s_words.Text();

    public static string Picture => s_words.Text();

    public static string Link => s_words.Text();

    public static string Open => s_words.Text();

    public static string Alone => s_words.Text();

    public static string NotAlone => s_words.Text();

    public static string NoVisit => s_words.Text();

    public static string NoVisitMore => s_words.Text();

    public static string Ended => s_words.Text();

    public static string ToChute => s_words.Text();

    public static string Ends(string when) => s_words.With([when]);

    public static string ListOf(string day) => s_words.With([day]);

    /// <summary>Why a link does not hold: one that ended, or one that the farm did not give out.</summary>
    public static string EndedWhy(bool isOver) => s_words.Text(isOver ? "Ended.over" : "Ended.unknown");
}
