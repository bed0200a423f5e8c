using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Words of the page about platforms.</summary>
internal static class PlatformTexts
{
    // A balance of 0.01 is about one per cent of weight between the sides: what is smaller is of no concern.
    private const double LeastToSay = 0.01;

    private static readonly Words s_words = new("Platform");

    public static string Title => s_words.Text();

    public static string Rejected => s_words.Text();

    public static string NoneRejected => s_words.Text();

    public static string NoneYet => s_words.Text();

    public static string NoCalibration => s_words.Text();

    public static string WhatToDo => s_words.Text();

    public static string Payload => s_words.Text();

    /// <summary>What to do about a platform that is in doubt, in that order.</summary>
    public static IEnumerable<string> Steps => Enumerable.Range(1, 4).Select(step => s_words.Text($"Step.{step}"));

    public static string State(string state) => s_words.Text($"State.{state}");

    /// <summary>A word above a figure: <c>LastCrossing</c>, <c>TagsRead</c> and so on.</summary>
    public static string Name(string what) => s_words.Text($"Name.{what}");

    public static string Ingest(IngestView ingest) => s_words.With(
        [Figures.Count(ingest.Rejected), Figures.Count(ingest.Received), Figures.Count(ingest.Duplicates), Figures.Count(ingest.Pending)]);

    /// <summary>Why a message was not used, by its reason on the wire; what it says beyond that is for who builds the device, in English.</summary>
    public static string Refused(string reason) => s_words.Has($"Rejected.{reason}") ? s_words.Text($"Rejected.{reason}") : s_words.With([reason], "RejectedOther");

    /// <summary>How far the whole herd leans.</summary>
    public static string Shift(Balances? shift)
    {
        if (shift is not { } s)
            return s_words.Text("Shift.unknown");
        var parts = new[]
        {
            Lean(s.ForeHind, s.ForeHind, "front", "back"),
            Lean(s.Fore * Math.Sqrt(2), s.Fore, "left-front", "right-front"),
            Lean(s.Hind * Math.Sqrt(2), s.Hind, "left-behind", "right-behind"),
        }.OfType<string>().ToArray();
        return parts.Length == 0 ? s_words.Text("Shift.none") : string.Join(", ", parts);
    }

    /// <summary>How a plate reads at its exit end against its entry end.</summary>
    public static string Ends(PlateEndsView ends) => s_words.With(
        [Figures.PercentFine(Math.Abs(ends.Percent)), Figures.PercentFine(ends.ErrorPercent)], ends.Percent < 0 ? "EndsLess" : "EndsMore");

    /// <summary>How a check with a test weight came out.</summary>
    public static string Verdict(CalibrationView kept) =>
        s_words.With([Figures.WeightFine(kept.WeightKg), kept.By], $"Verdict.{kept.Verdict}");

    private static string? Lean(double logRatio, double balance, string more, string less) => Math.Abs(balance) < LeastToSay
        ? null
        : s_words.With([Figures.PercentFine(100 * (Math.Exp(Math.Abs(logRatio)) - 1))], $"Shift.{(balance > 0 ? more : less)}");
}
