using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Words around share links.</summary>
internal static class ShareTexts
{
    public static string Title => "Share with the trimmer";

    public static string Opens => "This link opens the visit's list and the chute, and nothing else. Whoever has it can read the list and the register, and enter findings.";

    public static string Picture => "The link as a code for a phone's camera.";

    public static string Link => "The link";

    public static string Open => "Open it here";

    public static string Ends(string when) => $"The link ends {when}, at once when the visit is moved or cancelled.";

    public static string Alone => "Links answer at an address of their own, where nothing else does.";

    public static string NotAlone => "Links answer where all pages do. Before this machine can be reached from outside, set GaitWatch:Http:ShareUrls: then only links answer there.";

    public static string NoVisit => "No visit is planned";

    public static string NoVisitMore => "A link is for a visit that lies ahead: plan one first.";

    public static string Ended => "This link does not open";

    public static string ListOf(string day) => $"Trim list, {day}";

    public static string ToChute => "Open the chute";

    public static string Nobody => "No cow is on the list.";

    public static string Cows(int count) => Figures.Count(count, "cow", "cows");

    public static string Places(int count) => $"time for {count}";

    public static string Pen(string pen) => $"pen {pen}";

    /// <summary>Why she is on the list and which foot comes first.</summary>
    public static string Why(TrimListRow row) => row switch
    {
        { Reason: TrimListReason.Alert, Leg: { } leg, LoadDropPercent: { } drop } => FormattableString.Invariant($"{leg.InWords()}: carries {drop:0} % less"),
        { Leg: { } leg } => $"{leg.InWords()}: {Words(row.Reason)}",
        _ => Words(row.Reason),
    };

    /// <summary>What else to know before she comes.</summary>
    public static IEnumerable<string> Facts(TrimListRow row)
    {
        if (row.Note is { } note)
            yield return note;
        if (row.Since is { } since)
            yield return $"Since {FarmTimes.Day(since)}.";
        if (row.LastFinding is { } last)
            yield return $"Last: {last}.";
        if (row.BlockOn is { } block)
            yield return $"Block on since {FarmTimes.Day(block)}.";
        if (row.WithdrawalUntil is { } until)
            yield return $"Withdrawal until {FarmTimes.Day(until)}.";
        if (row.DueOn is { } due)
            yield return $"Due to calve {FarmTimes.Day(due)}.";
        if (!row.HasPlace)
            yield return "No time for her at this visit.";
    }

    private static string Words(TrimListReason reason) => reason switch
    {
        TrimListReason.Alert => "carries less",
        TrimListReason.NotRecovering => "is not getting better",
        TrimListReason.Recheck => "look again",
        TrimListReason.BlockCheck => "look at the block",
        TrimListReason.BlockOff => "block off",
        TrimListReason.WrapOff => "wrap off",
        _ => "routine trim",
    };
}
