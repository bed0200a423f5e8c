using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Words about flags.</summary>
internal static class AlertTexts
{
    private static readonly Words s_words = new("Alert");

    /// <summary>The leg in words, first letter large: "Right hind", "Both hind, right more".</summary>
    public static string Leg(AlertView alert) => alert.Pattern switch
    {
        "both-hind" or "both-fore" => s_words.Text($"{alert.Pattern}.{(LegOf(alert).IsLeft() ? "left" : "right")}"),
        _ => LegTexts.Title(LegOf(alert)),
    };

    public static Leg LegOf(AlertView alert) =>
        Legs.TryParseWireName(alert.Leg, out var leg) ? leg : throw new FormatException($"Alert '{alert.Id}' names leg '{alert.Leg}'.");

    /// <summary>The feet to mark in a picture: both of a pair where both carry less.</summary>
    public static IReadOnlyList<Leg> SoreFeet(AlertView alert) => alert.Pattern switch
    {
        "both-hind" or "both-fore" => [LegOf(alert), LegOf(alert).Opposite()],
        _ => [LegOf(alert)],
    };

    public static string Drop(AlertView alert) => s_words.With([Figures.Percent(alert.LoadDropPercent)]);

    public static string Interval(AlertView alert) =>
        s_words.With([$"{Math.Max(0, alert.LoadDropInterval[0]):0}", Figures.Percent(alert.LoadDropInterval[1])]);

    public static string For(int days) => days switch
    {
        <= 0 => s_words.Text("For.today"),
        1 => s_words.Text("For.yesterday"),
        _ => s_words.With([days]),
    };

    public static string Sure(AlertView alert)
    {
        var probability = alert.LegProbability[LegOf(alert)];
        return probability > 0.99 ? s_words.Text("SureOfLeg") : s_words.With([Figures.Percent(100 * probability)]);
    }

    /// <summary>Why she is flagged, from the flag's own figures.</summary>
    public static string Why(AlertView alert, FarmTimes times)
    {
        var what = s_words.With([LegTexts.Of(LegOf(alert)), Figures.Percent(Math.Max(0, alert.LoadDropPercent)), times.Day(alert.OnsetAt)], $"Why.{alert.Pattern}");
        var second = Legs.All.Where(leg => leg != LegOf(alert)).MaxBy(leg => alert.LegProbability[leg]);
        return alert.Pattern == "one-leg" && alert.LegProbability[LegOf(alert)] < 0.8
            ? $"{what} {s_words.With([LegTexts.Of(LegOf(alert)), Figures.Percent(100 * alert.LegProbability[LegOf(alert)]), LegTexts.Of(second), Figures.Percent(100 * alert.LegProbability[second])], "Doubt")}"
            : what;
    }

    public static string Urgency(AlertView alert) => s_words.Text($"Urgency.{(IsExamined(alert) ? "examined" : alert.Urgency)}");

    public static string UrgencyHeading(string urgency) => s_words.Text($"Heading.{urgency}");

    /// <summary>What to do, in the few words that fit beside a heading.</summary>
    public static string UrgencyHint(string urgency) => s_words.Text($"Hint.{urgency}");

    public static string Action(AlertView alert) => s_words.Text($"Action.{(IsExamined(alert) ? "examined" : alert.Urgency)}");

    /// <summary>What to lift beyond the leg named.</summary>
    public static string? Note(AlertView alert) =>
        Herd.TrimListOrder.NoteFor(LegOf(alert), AlertNames.TryParse<AlertPattern>(alert.Pattern, AlertNames.WireName, out var pattern) ? pattern : null) is { } note
            ? Words.Rule(note)
            : null;

    public static string State(string state) => s_words.Text($"State.{state}");

    /// <summary>A reason on its button.</summary>
    public static string Reason(AlertCloseReason reason) => s_words.Text($"Reason.{reason.WireName()}");

    public static string Reason(string? wire) =>
        AlertNames.TryParse<AlertCloseReason>(wire, AlertNames.WireName, out var reason) ? Reason(reason) : s_words.Text("NoReason");

    public static string Closed(AlertView alert) => s_words.With([alert.Cow, Leg(alert), Reason(alert.CloseReason)]);

    /// <summary>A closed flag in a line.</summary>
    public static string Past(AlertView alert, FarmTimes times) => s_words.With(
        [times.Day(alert.RaisedAt), Leg(alert), Figures.Percent(alert.LoadDropPercent), alert.ClosedAt is { } at ? times.Day(at) : "–", Reason(alert.CloseReason)]);

    /// <summary>When it was flagged and since when it is thought to have begun.</summary>
    public static string Dates(AlertView alert, FarmTimes times) => s_words.With([times.DayAndTime(alert.RaisedAt), times.Day(alert.OnsetAt)]);

    public static string Revised(string when) => s_words.With([when]);

    private static bool IsExamined(AlertView alert) => alert.State == AlertState.Examined.WireName();
}
