using GaitWatch.Lameness;

namespace GaitWatch.Web;

/// <summary>Words about how treated feet recover.</summary>
internal static class RecoveryTexts
{
    private static readonly Words s_words = new("Recovery");

    public static string Title => s_words.Text();

    public static string None => s_words.Text();

    public static string NoneMeaning => s_words.Text();

    public static string Lately => s_words.Text();

    public static string HowToRead => s_words.Text();

    public static string NotMeasured => s_words.Text();

    public static string ExpectedMark => s_words.Text();

    public static string Open(long feet) => s_words.Count(feet);

    public static string Status(RecoveryStatus status) => s_words.Text($"Status.{status.WireName()}");

    /// <summary>What the status asks for.</summary>
    public static string Action(RecoveryStatus status) => s_words.Text($"Action.{status.WireName()}");

    /// <summary>Where the foot stands, from its figures.</summary>
    public static string Now(RecoveryAssessment recovery) => recovery.DropPercentNow is { } now && recovery is { DropLowerPercent: { } low, DropUpperPercent: { } high }
        ? now >= 0 && low >= 0 ? s_words.With([Figures.PercentFine(now), $"{low:0.0}", Figures.PercentFine(high)])
            : now >= 0 ? s_words.With([Figures.PercentFine(now), Figures.PercentFine(-low), Figures.PercentFine(high)], "NowAround")
            : high <= 0 ? s_words.With([Figures.PercentFine(-now), $"{-high:0.0}", Figures.PercentFine(-low)], "NowMore")
            : s_words.With([Figures.PercentFine(-now), Figures.PercentFine(high), Figures.PercentFine(-low)], "NowMoreAround")
        : s_words.Text("NowUnknown");

    public static IEnumerable<string> Facts(RecoveryAssessment recovery, FarmTimes times)
    {
        yield return s_words.With([times.Day(recovery.TreatedAt)], "Treated");
        if (recovery.DropPercentAtTreatment is { } then)
            yield return s_words.With([Figures.PercentFine(then)], "AtTreatment");
        if (recovery.HalfLifeDays is { } half)
            yield return s_words.With([$"{half:0.0}"], "HalfLife");
        if (recovery.ExpectedNormalOn is { } expected)
            yield return s_words.With([FarmTimes.Day(expected)], "Expected");
        if (recovery.RecoveredOn is { } recovered)
            yield return s_words.With([FarmTimes.Day(recovered)], "RecoveredOn");
        if (recovery.BandPercent is { } band)
            yield return s_words.With([Figures.PercentFine(band)], "Band");
        if (recovery.LastSeenAt is { } seen)
            yield return s_words.With([times.DayAndTime(seen)], "LastSeen");
    }

    /// <summary>A day read off the chart.</summary>
    public static string Day(DailyDrop day)
    {
        var load = day.DropPercent >= 0
            ? s_words.With([FarmTimes.ShortDay(day.Day), Figures.PercentFine(day.DropPercent)], "Day.less")
            : s_words.With([FarmTimes.ShortDay(day.Day), Figures.PercentFine(-day.DropPercent)], "Day.more");
        return day.IsMasked || day.IsSettling ? load + s_words.Text("Day.masked") : load;
    }

    public static string LoadTick(int load) => load == 0 ? s_words.Text("Normal") : $"−{Figures.Percent(-load)}";

    public static string DayTick(int day) => day == 0 ? s_words.Text("Treatment") : s_words.With([day]);

    public static string Worn(string what) => s_words.Text($"Worn.{what}");

    public static string ChartOf(string cow, string leg) => s_words.With([cow, leg]);

    public static string LatelyLine(RecoveryAssessment recovery) => s_words.With(
        [recovery.Cow, LegTexts.Of(recovery.Foot), recovery.RecoveredOn is { } day ? FarmTimes.Day(day) : "–"]);
}
