using GaitWatch.Herd;

namespace GaitWatch.Barn;

/// <summary>Decides which frames and tags are no longer kept.</summary>
internal static class FrameRetention
{
    /// <summary>From when on they are kept: whole days back from the newest event.</summary>
    public static DateTimeOffset KeptFrom(FarmCalendar calendar, int days, DateTimeOffset newest) =>
        calendar.StartOf(calendar.DayOf(newest).AddDays(-days));

    /// <summary>Whether an event may move what is kept: one far ahead of the clock is a device's mistake, and frames once removed are gone.</summary>
    public static bool IsBelieved(DateTimeOffset at, DateTimeOffset now) => at <= now + MessageReader.FurthestAhead;
}
