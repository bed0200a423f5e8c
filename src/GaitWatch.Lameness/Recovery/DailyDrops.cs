using System.Collections.Immutable;

namespace GaitWatch.Lameness;

/// <summary>Passages of a treated leg gathered into farm days. Passages of one day are alike, so that a day counts once.</summary>
public static class DailyDrops
{
    /// <summary>The days, oldest first.</summary>
    /// <param name="foot">The treated foot.</param>
    /// <param name="readings">Its readings, in any order, each once; those that are no finite share, or have no expectation, are passed over.</param>
    /// <param name="options">Settings.</param>
    public static ImmutableArray<DailyDrop> Of(TreatedFoot foot, IEnumerable<LoadReading> readings, RecoveryOptions options)
    {
        var mask = new GaitMask(foot, options);
        return
        [
            .. readings
                .Where(reading => reading.ExpectedShare > 0 && double.IsFinite(reading.Share) && double.IsFinite(reading.ExpectedShare))
                // A reading of the treatment's own day, but before it, belongs to the time before.
                .GroupBy(reading => (Day: DayOf(reading.At, options), IsAfter: reading.At > foot.TreatedAt))
                .OrderBy(day => day.Key.Day).ThenBy(day => day.Key.IsAfter)
                .Select(day => Summed(day.Key.Day, [.. day.OrderBy(reading => reading.At).ThenBy(reading => reading.Share)], foot, mask)),
        ];
    }

    /// <summary>The farm day of an instant.</summary>
    internal static DateOnly DayOf(DateTimeOffset at, RecoveryOptions options) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, options.TimeZone).DateTime);

    private static DailyDrop Summed(DateOnly day, LoadReading[] readings, TreatedFoot foot, GaitMask mask) => new(
        day,
        readings.Average(reading => (reading.At - foot.TreatedAt).TotalDays),
        readings.Average(reading => reading.DropPercent),
        readings.Length,
        readings.Any(reading => mask.IsMasked(reading.At)),
        readings.Any(reading => mask.IsSettling(reading.At)));
}
