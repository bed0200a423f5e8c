using System.Globalization;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Reads query parameters, gathering everything that is wrong instead of stopping at the first.</summary>
internal sealed class QueryReader(FarmCalendar calendar)
{
    public const int DefaultPageSize = 100;
    public const int LargestPageSize = 1000;

    // Wider than any herd's records; at the calendar's own ends a day before or after cannot be told.
    private const int EarliestYear = 1970;
    private const int LatestYear = 2200;

    public Faults Faults { get; } = new();

    /// <summary>The refusal to answer with; only when there are faults.</summary>
    public Refusal Refusal => Refusal.Invalid(Faults);

    /// <summary>A day; null when not given or not to be read.</summary>
    public DateOnly? Day(string name, string? text)
    {
        if (string.IsNullOrEmpty(text))
            return null;
        if (Days.TryParse(text, out var day))
            return Within(name, text, day);
        Faults.Add(name, $"{name} is '{Shorten(text)}': a date such as 2026-03-02 is needed.");
        return null;
    }

    /// <summary>A span of time, from inclusive, to exclusive; a date means midnight in the farm's zone.</summary>
    public (DateTimeOffset? From, DateTimeOffset? To) Span(string? from, string? to)
    {
        var begin = Instant("from", from);
        var end = Instant("to", to);
        if (begin > end)
            Faults.Add("to", $"to is '{Shorten(to!)}', before from '{Shorten(from!)}': from is where the span begins (inclusive), to where it ends (exclusive).");
        return (begin, end);
    }

    /// <summary>Whole days of the farm, from inclusive, to exclusive; an instant means the day it lies in, as the end that day whole.</summary>
    /// <param name="from">The begin; null for that of <paramref name="absent"/>, or a year before an earlier end.</param>
    /// <param name="to">The end; null for that of <paramref name="absent"/>.</param>
    /// <param name="absent">What holds where nothing is given.</param>
    public Period WholeDays(string? from, string? to, Period absent)
    {
        var (begin, end) = Span(from, to);
        Within("from", from, begin is { } b ? calendar.DayOf(b) : null);
        Within("to", to, end is { } e ? calendar.DayOf(e) : null);
        if (Faults.Any)
            return absent;
        var last = end is { } until ? calendar.DayOf(until.AddMilliseconds(-1)) : absent.To.AddDays(-1);
        var first = begin is { } since ? calendar.DayOf(since) : Period.YearUpTo(last).From;
        return new Period(first, last.AddDays(1));
    }

    /// <summary>An instant, or the midnight that begins a date in the farm's zone.</summary>
    public DateTimeOffset? Instant(string name, string? text)
    {
        if (string.IsNullOrEmpty(text))
            return null;
        if (Days.TryParse(text, out var day))
            return Within(name, text, day) is { } known ? calendar.StartOf(known) : null;
        if (Instants.TryParse(text, out var instant))
            return instant;
        Faults.Add(name, $"{name} is '{Shorten(text)}': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed.");
        return null;
    }

    /// <summary>The part of a list that is wanted; null when the whole.</summary>
    public Page? Page(string? page, string? pageSize)
    {
        if (string.IsNullOrEmpty(page) && string.IsNullOrEmpty(pageSize))
            return null;
        var number = Whole("page", page, 1, 1, 1_000_000);
        var size = Whole("pageSize", pageSize, DefaultPageSize, 1, LargestPageSize);
        return new Page(number, size);
    }

    /// <summary>One of a few words; null when not given or none of them.</summary>
    public string? OneOf(string name, string? text, params ReadOnlySpan<string> words)
    {
        if (string.IsNullOrEmpty(text))
            return null;
        if (words.Contains(text))
            return text;
        Faults.Add(name, $"{name} is '{Shorten(text)}': one of {string.Join(", ", words!)} is needed.");
        return null;
    }

    /// <summary>Yes or no; no when not given.</summary>
    public bool Flag(string name, string? text) => OneOf(name, text, "true", "false") == "true";

    /// <summary>A number within bounds.</summary>
    public double Number(string name, string? text, double absent, double least, double most)
    {
        if (string.IsNullOrEmpty(text))
            return absent;
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        Faults.Add(name, string.Create(CultureInfo.InvariantCulture, $"{name} is '{Shorten(text)}': a number from {least} to {most} is needed."));
        return absent;
    }

    private DateOnly? Within(string name, string? text, DateOnly? day)
    {
        if (day is not { Year: < EarliestYear or > LatestYear })
            return day;
        if (!Faults.Has(name))
            Faults.Add(name, $"{name} is '{Shorten(text ?? "")}': a year from {EarliestYear} to {LatestYear} is needed.");
        return null;
    }

    private int Whole(string name, string? text, int absent, int least, int most)
    {
        if (string.IsNullOrEmpty(text))
            return absent;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var value) && value >= least && value <= most)
            return value;
        Faults.Add(name, $"{name} is '{Shorten(text)}': a whole number from {least} to {most} is needed.");
        return absent;
    }

    private static string Shorten(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
