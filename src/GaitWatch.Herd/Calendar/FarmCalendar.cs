namespace GaitWatch.Herd;

/// <summary>Days as the farm lives them: from midnight to midnight in its own time zone, 23 to 25 hours long.</summary>
/// <param name="Zone">The farm's time zone.</param>
public sealed record FarmCalendar(TimeZoneInfo Zone)
{
    /// <summary>The farm's day in which an instant falls.</summary>
    public DateOnly DayOf(DateTimeOffset instant) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(instant, Zone).DateTime);

    /// <summary>The instant at which a day begins. Where the clocks skip midnight, the first instant of that day.</summary>
    public DateTimeOffset StartOf(DateOnly day)
    {
        var local = day.ToDateTime(TimeOnly.MinValue);
        while (Zone.IsInvalidTime(local))
            local = local.AddMinutes(15);
        // Where midnight comes twice the day begins with the first one, which has the larger offset.
        var offset = Zone.IsAmbiguousTime(local) ? Zone.GetAmbiguousTimeOffsets(local).Max() : Zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset).ToUniversalTime();
    }

    /// <summary>The instant at which a day is over: the start of the next.</summary>
    public DateTimeOffset EndOf(DateOnly day) => StartOf(day.AddDays(1));
}
