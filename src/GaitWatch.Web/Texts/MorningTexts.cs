using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Words of the morning page.</summary>
internal static class MorningTexts
{
    public const string Title = "This morning";
    public const string NothingYet = "Nothing has crossed a platform yet.";
    public const string NothingYetWhatToDo = "As soon as cows cross, they are learnt here one by one. Look at the platforms if they should have.";
    public const string Quiet = "No cow is flagged.";
    public const string QuietMeaning = "Everyone who crossed puts her weight down as she is used to. A cow that did not cross is not watched: look at the ones in the hospital pen yourself.";
    public const string NothingNew = "Nothing new to look at.";
    public const string NothingNewMeaning = "The cows below are in hand. A cow that did not cross is not watched: look at the ones in the hospital pen yourself.";
    public const string TasksHeading = "The farm's own work:";
    public const string TasksHint = "due before the trimmer comes again";
    public const string Followed = "Looked at, not back to normal yet";
    public const string NotSeenHeading = "Find first";
    public const string NotSeenHint = "not crossed for over a day";
    public const string TroublesHeading = "Platform trouble";
    public const string TroublesMeaning = "Flags may be missing or wrong until it is put right.";
    public const string Close = "Close";
    public const string CloseWhy = "Close this flag because:";
    public const string WhyFlagged = "Why is she flagged?";

    public static string Count(int cows) => cows switch
    {
        0 => "none to look at",
        _ => $"{cows}\u00A0to look at",
    };

    public static string Waiting(DateOnly? visit) => visit is { } day ? $"Waiting for the trimmer on {FarmTimes.Day(day)}" : "Waiting for the trimmer";

    public static string OldTasks(int count) => count == 1 ? "One is overdue for more than two weeks" : $"{count} are overdue for more than two weeks";

    public static string Foot(string foot) => Legs.TryParseWireName(foot, out var leg) ? leg.InWords() : foot;

    public static string Due(FollowUpView task, DateOnly today) => task.OverdueOn < today ? $"overdue since {FarmTimes.Day(task.OverdueOn)}" : $"by {FarmTimes.Day(task.OverdueOn)}";

    public static string NotSeenSince(string when, string ago) => $"Not seen since {when}, {ago} ago";

    public static string Learning(int day, int days) =>
        $"Learning the herd: day {day} of {days}. Until then flags are less sure than they will be.";

    /// <summary>
    /// What to expect at the farm's setting. A herd has some 25 to 50 new cases a year per 100 cows (from memory, to be
    /// sourced), 0.5 to 1 a week, beside which stand the false flags that the farm allows.
    /// </summary>
    public static string Expectation(double falseAlertsPer100CowsPerWeek)
    {
        var setting = string.Create(CultureInfo.InvariantCulture, $"Set to {falseAlertsPer100CowsPerWeek:0.##} false {(falseAlertsPer100CowsPerWeek == 1 ? "flag" : "flags")} a week per 100\u00A0cows");
        var best = 1 + falseAlertsPer100CowsPerWeek;
        var worst = 1 + (2 * falseAlertsPer100CowsPerWeek);
        return best < 1.5
            ? $"{setting}: most flags should be true, and slow or slight trouble is told later."
            : string.Create(CultureInfo.InvariantCulture, $"{setting}: about one flag in {best:0} to {worst:0} is true. A look is cheap, a missed sore foot is not.");
    }
}
