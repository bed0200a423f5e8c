using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Web;

/// <summary>Words of the page about a visit and of its sheet.</summary>
internal static class VisitTexts
{
    private static readonly Words s_words = new("Visit");

    public static string Title => s_words.Text();

    public static string NotPlanned => s_words.Text();

    public static string NotPlannedMeaning => s_words.Text();

    public static string NobodyHeading => s_words.Text();

    public static string Nobody => s_words.Text();

    public static string Print => s_words.Text();

    public static string Spreadsheet => s_words.Text();

    public static string OtherVisits => s_words.Text();

    public static string WithoutPlace => s_words.Text();

    public static string WithoutPlaceHint => s_words.Text();

    public static string TakenOff => s_words.Text();

    public static string InHand => s_words.Text();

    public static string Tick => s_words.Text();

    public static string Ticked => s_words.Text();

    public static string Change => s_words.Text();

    public static string Up => s_words.Text();

    public static string Down => s_words.Text();

    public static string TakeOff => s_words.Text();

    public static string Why => s_words.Text();

    public static string AsRule => s_words.Text();

    public static string Pin => s_words.Text();

    public static string PinButton => s_words.Text();

    public static string PinCow => s_words.Text();

    public static string PinFoot => s_words.Text();

    public static string AnyFoot => s_words.Text();

    public static string Plan => s_words.Text();

    public static string PlanButton => s_words.Text();

    public static string Move => s_words.Text();

    public static string MoveButton => s_words.Text();

    public static string Cancel => s_words.Text();

    public static string Date => s_words.Text();

    public static string Half => s_words.Text();

    public static string Trimmer => s_words.Text();

    public static string Places => s_words.Text();

    public static string WorkWithCare => s_words.Text();

    public static string NotTaken => s_words.Text();

    public static string NoSuchDayMeaning => s_words.Text();

    public static string NoSuchDay(string day) => s_words.With([day]);

    public static string HalfOf(VisitHalf? half) => s_words.Text($"Half.{half?.WireName() ?? "day"}");

    /// <summary>Day, half, who comes and for how many cows there is time.</summary>
    public static string Facts(TrimList list)
    {
        var facts = new List<string> { FarmTimes.Day(list.Date) };
        if (list.Visit?.Half is { } half)
            facts.Add(HalfOf(half));
        if (list.Visit?.Trimmer is { Length: > 0 } trimmer)
            facts.Add(trimmer);
        return string.Join(", ", facts);
    }

    public static string Progress(int done, int all) => s_words.With([done, all]);

    public static string PlacesFor(long places) => s_words.Count(places);

    public static string Group(TrimListRow row) => row.Urgency is Urgency.Today ? s_words.Text("Group.today")
        : row.Pen is { } pen ? CowTexts.PenOf(pen) : s_words.Text("Group.no-pen");

    public static string TickOf(string cow) => s_words.With([cow]);

    public static string ChangeOf(string cow) => s_words.With([cow]);

    /// <summary>The leg to lift first: "Right hind first", "Routine trim".</summary>
    public static string Leg(TrimListRow row) => row.Leg is { } leg ? s_words.With([LegTexts.Title(leg)], "LegFirst") : s_words.Text("Reason.routine");

    /// <summary>Why she is on the list and since when.</summary>
    public static string WhyListed(TrimListRow row)
    {
        var why = new List<string>();
        if (row.Leg is not null)
            why.Add(s_words.Text($"Reason.{row.Reason.WireName()}"));
        if (row.LoadDropPercent is { } drop)
            why.Add(s_words.With([Figures.Percent(drop)], "Less"));
        if (row.Since is { } since)
            why.Add(s_words.With([FarmTimes.ShortDay(since)], "Since"));
        if (row.IsPinned)
            why.Add(s_words.Text("Pinned"));
        return string.Join(", ", why);
    }

    /// <summary>The same for the narrow column of the sheet.</summary>
    public static string WhyOnSheet(TrimListRow row) => row.LoadDropPercent is { } drop && row.Since is { } since
        ? s_words.With([Figures.Percent(drop), FarmTimes.ShortDay(since)], "LessSince")
        : row.Leg is null ? "" : s_words.Text($"Reason.{row.Reason.WireName()}");

    /// <summary>What to know of her: what was found last, block, withdrawal, days in milk.</summary>
    public static IEnumerable<string> Known(TrimListRow row, Finding? last, FarmTimes times) => AtWork(row, last, times).Concat(Stage(row));

    /// <summary>What bears on the work itself: what was found last, a block, a withdrawal time.</summary>
    public static IEnumerable<string> AtWork(TrimListRow row, Finding? last, FarmTimes times)
    {
        if (last is not null)
            yield return s_words.With([times.ShortDayOf(last.At), row.Leg is null ? $"{LegTexts.Of(last.Foot)}, " : "", FindingTexts.InWords(last)], "LastFound");
        if (row.BlockOn is { } block)
            yield return s_words.With([FarmTimes.ShortDay(block)], "Block");
        if (row.WithdrawalUntil is { } until)
            yield return s_words.With([FarmTimes.Date(until)], "Withdrawal");
    }

    private static IEnumerable<string> Stage(TrimListRow row)
    {
        if (row.DaysInMilk is { } days)
            yield return CowTexts.InMilk(days);
        if (row.DryFrom is { } dry)
            yield return s_words.With([FarmTimes.ShortDay(dry)], "Dry");
        if (row.DueOn is { } due)
            yield return s_words.With([FarmTimes.ShortDay(due)], "Due");
    }

    public static string Removed(TrimListRemoval removal) => s_words.With([removal.Cow, removal.Why]);

    /// <summary>A word above a column of the sheet.</summary>
    public static string Column(string what) => s_words.Text($"Column.{what}");

    public static string Sheet(int number, int all) => s_words.With([number, all]);
}
