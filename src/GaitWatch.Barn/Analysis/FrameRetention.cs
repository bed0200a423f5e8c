using GaitWatch.Herd;

namespace GaitWatch.Barn;

/// <summary>Decides which frames and tags are no longer kept.</summary>
internal static class FrameRetention
{
    /// <summary>From when on they are kept: whole days back from the newest event.</summary>
    /// <param name="calendar">The farm's days.</param>
    /// <param name="days">How many are kept.</param>
    /// <param name="newest">The newest event.</param>
    /// <param name="now">The clock: an event far ahead of it is a device's mistake and removes nothing.</param>
    public static DateTimeOffset KeptFrom(FarmCalendar calendar, int days, DateTimeOffset newest, DateTimeOffset now)
    {
        var believed = newest > now + MessageReader.FurthestAhead ? now : newest;
        return calendar.StartOf(calendar.DayOf(believed).AddDays(-days));
    }
}
