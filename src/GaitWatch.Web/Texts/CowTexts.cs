namespace GaitWatch.Web;

/// <summary>Words of the pages about cows.</summary>
internal static class CowTexts
{
    private static readonly Words s_words = new("Cow");

    public static string ListTitle => s_words.Text();

    public static string Search => s_words.Text();

    public static string SearchButton => s_words.Text();

    public static string NoneFound => s_words.Text();

    public static string Charts => s_words.Text();

    /// <summary>How the charts are read whose points stand for so many days.</summary>
    public static string HowToRead(int daysAPoint) => $"{s_words.Text($"Point.{daysAPoint}")} {s_words.Text()}";

    public static string NoData => s_words.Text();

    public static string Passages => s_words.Text();

    public static string Register => s_words.Text();

    public static string PastAlerts => s_words.Text();

    public static string Unknown => s_words.Text();

    public static string NoNormalYet => s_words.Text();

    public static string TimeShown => s_words.Text();

    public static string Earlier => s_words.Text();

    public static string Later => s_words.Text();

    public static string Parts => s_words.Text();

    public static string AllTime => s_words.Text();

    public static string OwnSpan => s_words.Text();

    public static string From => s_words.Text();

    public static string To => s_words.Text();

    public static string Show => s_words.Text();

    public static string Feet => s_words.Text();

    public static string Happened => s_words.Text();

    public static string Began(string leg) => s_words.With([leg]);

    public static string Flagged(string leg) => s_words.With([leg]);

    public static string FlagClosed(string leg, string reason) => s_words.With([leg, reason]);

    /// <summary>What was found or happened in a foot.</summary>
    public static string FoundIn(string foot, string what) => s_words.With([foot, what]);

    public static string CameOff(Lameness.RecoveryMarkKind what) => s_words.Text($"CameOff.{what}");

    public static string Cows(long count) => s_words.Count(count);

    public static string Title(string cow) => s_words.With([cow]);

    public static string Span(int days) => days == 365 ? s_words.Text("Year") : FarmTimes.Days(days);

    public static string Shown(int shown, int all) => shown == all ? s_words.With([all], "AllShown") : s_words.With([shown, all]);

    /// <summary>A word beside or above a figure: <c>Tag</c>, <c>Pen</c>, <c>When</c> and so on.</summary>
    public static string Name(string what) => s_words.Text($"Name.{what}");

    public static string InPen(string pen) => s_words.With([pen]);

    /// <summary>Her pen where it stands alone.</summary>
    public static string PenOf(string pen) => s_words.With([pen]);

    public static string InMilk(int days) => s_words.With([FarmTimes.Days(days)]);

    public static string NoneOf(string title) => s_words.With([title]);

    public static string NoneOfMeaning => s_words.Text();
}
