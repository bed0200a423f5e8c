using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Words about flags.</summary>
internal static class AlertTexts
{
    /// <summary>The leg in words, first letter large: "Right hind", "Both hind, right more".</summary>
    public static string Leg(AlertView alert)
    {
        var leg = LegOf(alert);
        var side = leg.IsLeft() ? "left" : "right";
        var words = alert.Pattern switch
        {
            "both-hind" => $"both hind, {side} more",
            "both-fore" => $"both fore, {side} more",
            _ => leg.InWords(),
        };
        return First(words);
    }

    public static Leg LegOf(AlertView alert) =>
        Legs.TryParseWireName(alert.Leg, out var leg) ? leg : throw new FormatException($"Alert '{alert.Id}' names leg '{alert.Leg}'.");

    /// <summary>The feet to mark in a picture: both of a pair where both carry less.</summary>
    public static IReadOnlyList<Leg> SoreFeet(AlertView alert) => alert.Pattern switch
    {
        "both-hind" or "both-fore" => [LegOf(alert), LegOf(alert).Opposite()],
        _ => [LegOf(alert)],
    };

    public static string Drop(AlertView alert) => $"{Figures.Percent(alert.LoadDropPercent)} less weight";

    public static string Interval(AlertView alert) => string.Create(
        CultureInfo.InvariantCulture, $"Between {Math.Max(0, alert.LoadDropInterval[0]):0} and {alert.LoadDropInterval[1]:0}\u00A0% less, with 95\u00A0% certainty");

    public static string For(int days) => days switch
    {
        <= 0 => "since today",
        1 => "since yesterday",
        _ => $"for {Figures.Count(days, "day", "days")}",
    };

    public static string Sure(AlertView alert)
    {
        var probability = alert.LegProbability[LegOf(alert)];
        return probability > 0.99 ? "Sure of the leg" : $"{Figures.Percent(100 * probability)} sure of the leg";
    }

    public static string Urgency(AlertView alert) => alert.State == AlertState.Examined.WireName() ? "Looked at" : alert.Urgency switch
    {
        "today" => "Today",
        "next-visit" => "Next visit",
        _ => "Watch",
    };

    public static string UrgencyHeading(string urgency) => urgency switch
    {
        "today" => "Look today",
        "next-visit" => "Next visit",
        _ => "Watch",
    };

    /// <summary>What to do, in the few words that fit beside a heading.</summary>
    public static string UrgencyHint(string urgency) => urgency switch
    {
        "today" => "lift the foot within 48\u00A0hours",
        "next-visit" => "keep her for the trimmer",
        _ => "nothing to do yet",
    };

    public static string Action(AlertView alert) => alert.State == AlertState.Examined.WireName() ? "Her foot was looked at; see whether it takes her weight again." : alert.Urgency switch
    {
        "today" => "Look at her today, lift the foot within 48\u00A0hours.",
        "next-visit" => "Keep her for the trimmer; she can wait.",
        _ => "Nothing to do; she moves up if it gets worse.",
    };

    /// <summary>What to lift beyond the leg named.</summary>
    public static string? Note(AlertView alert) =>
        TrimListOrder.NoteFor(LegOf(alert), AlertNames.TryParse<AlertPattern>(alert.Pattern, AlertNames.WireName, out var pattern) ? pattern : null);

    public static string State(string state) => state switch
    {
        "open" => "Open",
        "listed" => "On the trim list",
        "examined" => "Foot looked at",
        _ => "Closed",
    };

    /// <summary>A reason on its button.</summary>
    public static string Reason(AlertCloseReason reason) => reason switch
    {
        AlertCloseReason.LiftedNothingFound => "Lifted, nothing found",
        AlertCloseReason.SeenWalkingSound => "Seen walking sound",
        AlertCloseReason.TreatedByFarm => "Treated by us",
        AlertCloseReason.WrongCow => "It was another cow",
        AlertCloseReason.LeftHerd => "She left the herd",
        AlertCloseReason.LoadNormal => "Weight back to her normal",
        _ => "Another reason",
    };

    public static string Reason(string? wire) =>
        AlertNames.TryParse<AlertCloseReason>(wire, AlertNames.WireName, out var reason) ? Reason(reason) : "no reason told";

    public static string Closed(AlertView alert) => $"Cow {alert.Cow}, {Leg(alert).ToLowerInvariant()}: closed. Reason: {Reason(alert.CloseReason).ToLowerInvariant()}.";

    private static string First(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
