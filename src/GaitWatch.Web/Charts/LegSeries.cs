using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>A leg's days and what happened to it.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Days">The days she crossed, or the weeks, oldest first.</param>
/// <param name="Marks">Onsets, flags, findings, closings.</param>
/// <param name="Worn">Times with a block or wrap on the foot.</param>
public sealed record LegSeries(Leg Leg, ImmutableArray<LegDay> Days, ImmutableArray<ChartMark> Marks, ImmutableArray<CareSpan> Worn)
{
    /// <summary>
    /// Puts passages and what they told together, a point for so many days. Refused passages, and those that were no evidence,
    /// are left out.
    /// </summary>
    internal static ImmutableArray<LegSeries> Of(
        IEnumerable<PassageView> passages, IEnumerable<PassageAssessment> assessments, FarmCalendar calendar, int daysAPoint,
        Func<Leg, IEnumerable<ChartMark>> marks, Func<Leg, IEnumerable<CareSpan>> worn)
    {
        var told = assessments.Where(assessment => assessment.Reasons.IsEmpty).ToDictionary(assessment => assessment.PassageId, StringComparer.Ordinal);
        var days = passages
            .Where(passage => passage.Quality == "accepted" && told.ContainsKey(passage.Id))
            .GroupBy(passage => calendar.DayOf(passage.EndedAt).DayNumber / daysAPoint)
            .OrderBy(day => day.Key)
            .Select(day => new CrossedDay(DateOnly.FromDayNumber((day.Key * daysAPoint) + (daysAPoint / 2)), [.. day.Select(passage => (passage.Legs, told[passage.Id]))]))
            .ToArray();
        return [.. Legs.All.Select(leg => new LegSeries(leg, [.. days.Select(day => Day(leg, day)).OfType<LegDay>()], [.. marks(leg)], [.. worn(leg)]))];
    }

    private static LegDay? Day(Leg leg, CrossedDay day)
    {
        var shares = day.Passages.Select(passage => passage.Legs[leg].Share).OfType<double>().ToArray();
        if (shares.Length == 0)
            return null;
        var normal = day.Passages.Select(passage => passage.Told.ExpectedShare?[leg]).OfType<double>().ToArray();
        var spread = day.Passages.Select(passage => passage.Told.ShareSpread?[leg]).OfType<double>().ToArray();
        return new LegDay(
            day.Day, shares.Length, shares.Average(), normal.Length == 0 ? null : normal.Average(), spread.Length == 0 ? null : spread.Average(),
            day.Passages.Max(passage => Evidence(leg, passage.Told)));
    }

    // What speaks of a leg is what speaks of it alone and of its pair.
    private static double Evidence(Leg leg, PassageAssessment told) =>
        Math.Max(told.OneLegEvidence[leg], leg.IsFore() ? told.BothForeEvidence : told.BothHindEvidence);

    private sealed record CrossedDay(DateOnly Day, (PerLeg<LegLoad> Legs, PassageAssessment Told)[] Passages);
}
