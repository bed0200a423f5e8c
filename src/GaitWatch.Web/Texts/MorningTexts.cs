using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Words of the morning page.</summary>
internal static class MorningTexts
{
    private static readonly Words s_words = new("Morning");

    public static string Title => s_words.Text();

    public static string NothingYet => s_words.Text();

    public static string NothingYetWhatToDo => s_words.Text();

    public static string Quiet => s_words.Text();

    public static string QuietMeaning => s_words.Text();

    public static string NothingNew => s_words.Text();

    public static string NothingNewMeaning => s_words.Text();

    public static string TasksHeading => s_words.Text();

    public static string TasksHint => s_words.Text();

    public static string Followed => s_words.Text();

    public static string NotSeenHeading => s_words.Text();

    public static string NotSeenHint => s_words.Text();

    public static string TroublesHeading => s_words.Text();

    public static string TroublesMeaning => s_words.Text();

    public static string Close => s_words.Text();

    public static string CloseWhy => s_words.Text();

    public static string CloseNote => s_words.Text();

    public static string NotClosed => s_words.Text();

    public static string WhyFlagged => s_words.Text();

    public static string Tick => s_words.Text();

    public static string TaskBy => s_words.Text();

    public static string TaskNotTaken => s_words.Text();

    public static string MissingHeading => s_words.Text();

    public static string MissingHint => s_words.Text();

    public static string TickOf(string cow, string foot) => s_words.With([cow, foot]);

    public static string TaskTaken(string cow, string foot) => s_words.With([cow, foot]);

    public static string CloseFlagOf(string cow) => s_words.With([cow]);

    public static string Count(int cows) => cows == 0 ? s_words.Text("Count.none") : s_words.With([cows]);

    public static string Waiting(DateOnly? visit) => visit is { } day ? s_words.With([FarmTimes.Day(day)], "WaitingUntil") : s_words.Text();

    public static string OldTasks(int count) => s_words.Count(count);

    public static string Due(FollowUpView task, DateOnly today) =>
        s_words.With([FarmTimes.Day(task.OverdueOn)], task.OverdueOn < today ? "Overdue" : "DueBy");

    public static string NotSeenSince(string when, string ago) => s_words.With([when, ago]);

    public static string Learning(int day, int days) => s_words.With([day, days]);

    /// <summary>How often this herd's own flags were true; nothing while none was lifted.</summary>
    public static string OwnHits(FlagTallyView hits) => hits.Hits switch
    {
        { Of: 0 } => "",
        { Share: { } share, Interval: [var low, var high] } when hits.IsEnough => s_words.With(
            [hits.Lifted, hits.Right, Figures.Percent(100 * share), $"{100 * low:0}", Figures.Percent(100 * high)], "Own"),
        _ => s_words.With([hits.Lifted, hits.Right], "OwnFew"),
    };

    /// <summary>
    /// What to expect at the farm's setting. A herd has some 25 to 50 new cases a year per 100 cows (from memory, to be
    /// sourced), 0.5 to 1 a week, beside which stand the false flags that the farm allows.
    /// </summary>
    public static string Expectation(double falseAlertsPer100CowsPerWeek)
    {
        var setting = s_words.With([$"{falseAlertsPer100CowsPerWeek:0.##}"], falseAlertsPer100CowsPerWeek == 1 ? "Setting.one" : "Setting.other");
        var best = 1 + falseAlertsPer100CowsPerWeek;
        var worst = 1 + (2 * falseAlertsPer100CowsPerWeek);
        return best < 1.5 ? s_words.With([setting], "ExpectMost") : s_words.With([setting, $"{best:0}", $"{worst:0}"]);
    }
}
