using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>The points of one treated foot: where it stands, at the treatment's time, and a point a day since.</summary>
internal static class RecoveryPoints
{
    public static IReadOnlyList<SeriesPoint> Of(string farm, RecoveryAssessment recovery, FarmCalendar calendar)
    {
        PointBuilder Point(string measurement, long at) => new PointBuilder(measurement, at, farm)
            .Tag("finding", recovery.FindingId).Tag("cow", recovery.Cow).Tag("foot", recovery.Foot.WireName());

        var treatedOn = calendar.DayOf(recovery.TreatedAt);
        var points = new List<SeriesPoint>
        {
            Point("recovery", recovery.TreatedAt.ToMs())
                .Field("status", recovery.Status.WireName())
                .Field("not_recovering", recovery.IsNotRecovering)
                .Field("drop_at_treatment_percent", recovery.DropPercentAtTreatment)
                .Field("drop_now_percent", recovery.DropPercentNow)
                .Field("drop_now_lower_percent", recovery.DropLowerPercent)
                .Field("drop_now_upper_percent", recovery.DropUpperPercent)
                .Field("band_percent", recovery.BandPercent)
                .Field("half_life_days", recovery.HalfLifeDays)
                .Field("days_to_expected_normal", Days(treatedOn, recovery.ExpectedNormalOn))
                .Field("days_to_recovered", Days(treatedOn, recovery.RecoveredOn))
                .Field("explanation", recovery.Explanation)
                .Build(),
        };
        points.AddRange(recovery.Days.Select(day => Point("recovery_day", calendar.StartOf(day.Day).ToMs())
            .Field("drop_percent", day.DropPercent)
            .Field("days_since_treatment", day.DaysSinceTreatment)
            .Field("passages", (long)day.Passages)
            .Field("masked", day.IsMasked)
            .Field("band_percent", recovery.BandPercent)
            .Build()));
        return points;
    }

    private static long? Days(DateOnly from, DateOnly? to) => to?.DayNumber - from.DayNumber;
}
