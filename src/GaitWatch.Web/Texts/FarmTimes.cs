using System.Globalization;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Times for people, in the farm's zone and the language of the request.</summary>
internal sealed class FarmTimes(FarmCalendar calendar)
{
    private static readonly Words s_words = new("Times");

    public string Zone => calendar.Zone.Id;

    /// <summary>Such as "Mon 8 Jun".</summary>
    public static string Day(DateOnly day) => Show(day, s_words.Text());

    /// <summary>Such as "8 Jun".</summary>
    public static string ShortDay(DateOnly day) => Show(day, s_words.Text());

    /// <summary>Such as "8 Jun".</summary>
    public string ShortDayOf(DateTimeOffset instant) => ShortDay(calendar.DayOf(instant));

    /// <summary>Such as "Jun", for a chart.</summary>
    public static string Month(DateOnly day) => Show(day, "MMM");

    /// <summary>Such as "June 2026".</summary>
    public static string MonthAndYear(DateOnly day) => Show(day, "MMMM yyyy");

    /// <summary>Such as "8 June 2026".</summary>
    public static string Date(DateOnly day) => Show(day, s_words.Text());

    /// <summary>Such as "Mon 8 Jun".</summary>
    public string Day(DateTimeOffset instant) => Day(calendar.DayOf(instant));

    /// <summary>Such as "Mon 8 Jun, 16:40".</summary>
    public string DayAndTime(DateTimeOffset instant) => Show(instant, s_words.Text());

    /// <summary>Such as "8 Jun 16:40", for tables.</summary>
    public string Short(DateTimeOffset instant) => Show(instant, s_words.Text());

    /// <summary>For the machine-readable attribute of a time element.</summary>
    public static string Machine(DateTimeOffset instant) => instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    /// <summary>A day as a route takes it.</summary>
    public static string Machine(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>Such as "38 hours ago" or "4 days ago".</summary>
    public static string Ago(TimeSpan span) => span.TotalHours < 48
        ? s_words.Count((long)Math.Max(0, span.TotalHours), "AgoHours")
        : s_words.Count((long)span.TotalDays, "AgoDays");

    /// <summary>Such as "4 days".</summary>
    public static string Days(long days) => s_words.Count(days);

    private static string Show(DateOnly day, string format) => day.ToString(format, CultureInfo.CurrentCulture);

    private string Show(DateTimeOffset instant, string format) =>
        TimeZoneInfo.ConvertTime(instant, calendar.Zone).DateTime.ToString(format, CultureInfo.CurrentCulture);
}
