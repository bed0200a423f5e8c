using System.Globalization;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>An alert in plain words for the herd manager: which leg, how much, since when, what to do. It points at a cow; it names no illness.</summary>
internal static class AlertText
{
    /// <summary>The sentence or three.</summary>
    /// <param name="alert">The alert; its explanation is not read.</param>
    /// <param name="drop">The leg's drop.</param>
    /// <param name="zone">The farm's time zone.</param>
    public static string Of(Alert alert, LoadDrop drop, TimeZoneInfo zone)
    {
        var what = alert.Pattern switch
        {
            AlertPattern.OneLeg => $"Her {alert.Leg.InWords()} leg carries",
            AlertPattern.BothHind => "Both hind legs carry less; the worse, her " + alert.Leg.InWords() + ", carries",
            _ => "Both fore legs carry less; the worse, her " + alert.Leg.InWords() + ", carries",
        };
        var since = TimeZoneInfo.ConvertTime(alert.OnsetAt, zone);
        var lower = Math.Max(drop.Lower, 0);
        var fact = string.Create(
            CultureInfo.InvariantCulture,
            $"{what} {Math.Max(drop.Percent, 0):0} % less than is normal for her (likely {lower:0} to {Math.Max(drop.Upper, lower):0} %): {100 * drop.ShareNow:0.0} % of her weight instead of {100 * drop.BaselineShare:0.0} %, since about {since:d MMMM}{Likely(alert, zone)}.");
        var sure = alert.Pattern == AlertPattern.OneLeg && alert.LegProbability[alert.Leg] < 0.8 ? Doubt(alert) : "";
        return fact + sure + " " + Advice(alert);
    }

    /// <summary>The days between which it likely began, where they differ from the one named.</summary>
    private static string Likely(Alert alert, TimeZoneInfo zone)
    {
        if (alert is not { OnsetEarliestAt: { } earliest, OnsetLatestAt: { } latest })
            return "";
        var (from, to) = (TimeZoneInfo.ConvertTime(earliest, zone), TimeZoneInfo.ConvertTime(latest, zone));
        return from.Date == to.Date ? "" : string.Create(CultureInfo.InvariantCulture, $" (likely {from:d MMMM} to {to:d MMMM})");
    }

    private static string Doubt(Alert alert)
    {
        var second = Legs.All.Where(l => l != alert.Leg).MaxBy(l => alert.LegProbability[l]);
        return string.Create(
            CultureInfo.InvariantCulture,
            $" The leg is not certain: {alert.Leg.InWords()} {100 * alert.LegProbability[alert.Leg]:0} %, {second.InWords()} {100 * alert.LegProbability[second]:0} %.");
    }

    private static string Advice(Alert alert)
    {
        if (alert.State == AlertState.Examined)
            return "The foot was looked at; she is followed until it takes her weight again. No better: call the veterinarian.";
        var feet = alert.Pattern switch
        {
            AlertPattern.BothFore => "both fore feet",
            AlertPattern.OneLeg when alert.Leg.IsFore() => "both fore feet",
            _ => "both hind feet",
        };
        return alert.Urgency switch
        {
            Urgency.Today => $"Look at her today and have {feet} lifted within 48 hours. If she puts no weight on the leg, call the veterinarian the same day.",
            Urgency.NextVisit => $"Look at her walking; have {feet} lifted at the next visit if it is near, today if it is not.",
            _ => "Nothing to do yet; it is told again if it gets worse.",
        };
    }
}
