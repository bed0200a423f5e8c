using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>Days along a chart: from the beginning of the first to the end of the last, in the farm's zone.</summary>
/// <param name="First">First day shown.</param>
/// <param name="Last">Last day shown.</param>
/// <param name="Left">Where the first day begins, chart units.</param>
/// <param name="Right">Where the last day ends, chart units.</param>
/// <param name="Calendar">The farm's days.</param>
public sealed record DayAxis(DateOnly First, DateOnly Last, double Left, double Right, FarmCalendar Calendar)
{
    private double PerDay => (Right - Left) / (Last.DayNumber - First.DayNumber + 1);

    /// <summary>The middle of a day.</summary>
    public double Middle(DateOnly day) => Left + ((day.DayNumber - First.DayNumber + 0.5) * PerDay);

    /// <summary>The beginning of a day.</summary>
    public double Begin(DateOnly day) => Left + ((day.DayNumber - First.DayNumber) * PerDay);

    /// <summary>An instant, by its part of the farm's day, which has 23 to 25 hours.</summary>
    public double At(DateTimeOffset instant)
    {
        var day = Calendar.DayOf(instant);
        var start = Calendar.StartOf(day);
        return Begin(day) + ((instant - start) / (Calendar.EndOf(day) - start) * PerDay);
    }

    /// <summary>Whether an instant is on the axis.</summary>
    public bool Holds(DateTimeOffset instant) => Calendar.DayOf(instant) is var day && day >= First && day <= Last;

    /// <summary>Width of a day, chart units.</summary>
    public double DayWidth => PerDay;

    /// <summary>Days to name below the axis: some four or five, Mondays or firsts of months where the span is long.</summary>
    public IEnumerable<DateOnly> Ticks()
    {
        var days = Last.DayNumber - First.DayNumber + 1;
        return days switch
        {
            <= 21 => All().Where(day => (Last.DayNumber - day.DayNumber) % 4 == 3),
            <= 75 => All().Where(day => day.DayOfWeek == DayOfWeek.Monday).Where((_, i) => i % 2 == 0),
            <= 200 => All().Where(day => day.Day == 1),
            <= 500 => All().Where(day => day.Day == 1 && day.Month % 3 == 1),
            <= 1000 => All().Where(day => day.Day == 1 && day.Month % 6 == 1),
            _ => All().Where(day => day.Day == 1 && day.Month == 1),
        };
    }

    /// <summary>Every day along it.</summary>
    public IEnumerable<DateOnly> All()
    {
        for (var day = First; day <= Last; day = day.AddDays(1))
            yield return day;
    }
}
