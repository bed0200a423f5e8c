using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Words of the page about the herd.</summary>
internal static class HerdTexts
{
    private static readonly Words s_words = new("Herd");

    public static string Title => s_words.Text();

    public static string MonthByMonth => s_words.Text();

    public static string TimeShown => s_words.Text();

    public static string WereFlagsTrue => s_words.Text();

    public static string WereFlagsTrueMeaning => s_words.Text();

    public static string ClosedBecause => s_words.Text();

    public static string Where => s_words.Text();

    public static string Clusters => s_words.Text();

    public static string NoClusters => s_words.Text();

    public static string WhatWorks => s_words.Text();

    public static string WhatWorksCaution => s_words.Text();

    public static string NothingTreated => s_words.Text();

    public static string ByTreatment => s_words.Text();

    public static string ClawHorn => s_words.Text();

    public static string TooFew => s_words.Text();

    public static string Months(int months) => s_words.With([months]);

    /// <summary>A word above a column.</summary>
    public static string Column(string what) => s_words.Text($"Column.{what}");

    /// <summary>So many of so many with the share and its interval; the share is left out where so few say nothing.</summary>
    public static string Share(ProportionView part, bool isEnough = true) => part switch
    {
        { Of: 0 } => "–",
        { Share: { } share, Interval: [var low, var high] } when isEnough => s_words.With([part.Count, part.Of, Figures.Percent(100 * share), $"{100 * low:0}", Figures.Percent(100 * high)]),
        _ => s_words.With([part.Count, part.Of], "OutOf"),
    };

    public static string Days(WaitingView waiting) => waiting.MedianDays is { } days ? s_words.With([$"{days:0.#}"]) : waiting.Count == 0 ? "–" : s_words.Text("NotYetHalf");

    public static string Per100Cows(int count, int cows) => cows == 0 ? "–" : Figures.Fraction(100.0 * count / cows);

    public static string Pen(string? pen) => pen is null ? s_words.Text("NoPen") : CowTexts.PenOf(pen);

    public static string Zone(int? zone) => zone is { } number ? s_words.With([number]) : s_words.Text("NoZone");

    public static string Lesion(string wireName) => Lesions.TryParse(wireName, out var lesion) ? FindingTexts.Lesion(lesion) : wireName;

    public static string Cluster(ClusterView cluster) => s_words.With(
        [cluster.Count, Words.Rule(cluster.Lesions), CowTexts.InPen(cluster.Pen), FarmTimes.ShortDay(cluster.From), FarmTimes.ShortDay(cluster.To), $"{cluster.Expected:0.#}"]);

    public static string Treatment(string wireName) => string.Join(" + ", wireName.Split('+').Select(part => s_words.Text($"Treatment.{part}")));

    public static string Reason(DismissalCountView reason) => s_words.With([AlertTexts.Reason(reason.Reason), reason.Count]);
}
