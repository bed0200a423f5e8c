using System.Globalization;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Times for people, in the farm's zone.</summary>
internal sealed class FarmTimes(FarmCalendar calendar)
{
    public string Zone => calendar.Zone.Id;

    /// <summary>Such as "Mon 8 Jun".</summary>
    public static string Day(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>Such as "8 June 2026".</summary>
    public static string Date(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>Such as "Mon 8 Jun".</summary>
    public string Day(DateTimeOffset instant) => Day(calendar.DayOf(instant));

    /// <summary>Such as "Mon 8 Jun, 16:40".</summary>
    public string DayAndTime(DateTimeOffset instant) => Local(instant).ToString("ddd d MMM, HH:mm", CultureInfo.InvariantCulture);

    /// <summary>Such as "8 Jun 16:40", for tables.</summary>
    public string Short(DateTimeOffset instant) => Local(instant).ToString("d MMM HH:mm", CultureInfo.InvariantCulture);

    /// <summary>For the machine-readable attribute of a time element.</summary>
    public static string Machine(DateTimeOffset instant) => instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);

    /// <summary>How long ago, such as "38 hours" or "4 days".</summary>
    public static string Ago(TimeSpan span) => span.TotalHours < 48
        ? Figures.Count((long)Math.Max(0, span.TotalHours), "hour", "hours")
        : Figures.Count((long)span.TotalDays, "day", "days");

    private DateTime Local(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, calendar.Zone).DateTime;
}
