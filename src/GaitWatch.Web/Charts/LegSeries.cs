using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>A leg's days and what happened to its flags.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Days">The days she crossed, oldest first.</param>
/// <param name="Marks">Onsets, flags and closings.</param>
public sealed record LegSeries(Leg Leg, ImmutableArray<LegDay> Days, ImmutableArray<ChartMark> Marks)
{
    /// <summary>Puts passages and what they told together, a day a point. Refused passages, and those that were no evidence, are left out.</summary>
    /// <param name="passages">Her passages, oldest first; from a while before the first day, so that her normal from before a flag is among them.</param>
    /// <param name="assessments">What they told.</param>
    /// <param name="alerts">Her flags.</param>
    /// <param name="first">The first day wanted.</param>
    /// <param name="calendar">The farm's days.</param>
    internal static ImmutableArray<LegSeries> Of(
        IEnumerable<PassageView> passages, IEnumerable<PassageAssessment> assessments, IReadOnlyCollection<AlertView> alerts, DateOnly first, FarmCalendar calendar)
    {
        var told = assessments.Where(assessment => assessment.Reasons.IsEmpty).ToDictionary(assessment => assessment.PassageId, StringComparer.Ordinal);
        var days = passages
            .Where(passage => passage.Quality == "accepted" && told.ContainsKey(passage.Id))
            .GroupBy(passage => calendar.DayOf(passage.EndedAt))
            .OrderBy(day => day.Key)
            .Select(day => new CrossedDay(day.Key, [.. day.Select(passage => (passage.Legs, told[passage.Id]))]))
            .ToArray();
        return [.. Legs.All.Select(leg => new LegSeries(
            leg,
            [.. KeepNormal(days, leg, alerts, calendar).Where(day => day.Day >= first)],
            [.. alerts.Where(alert => AlertTexts.SoreFeet(alert).Contains(leg)).SelectMany(ChartMark.Of)]))];
    }

    // While a flag is open what is expected of her follows her, sore as she is. Her normal is what it was before that began.
    private static IEnumerable<LegDay> KeepNormal(CrossedDay[] days, Leg leg, IReadOnlyCollection<AlertView> alerts, FarmCalendar calendar)
    {
        var normal = new List<LegDay>();
        foreach (var crossed in days)
        {
            if (Day(leg, crossed) is not { } day)
                continue;
            if (!crossed.IsFrozen)
            {
                normal.Add(day);
                yield return day;
                continue;
            }

            var onset = alerts
                .Where(alert => calendar.DayOf(alert.RaisedAt) <= day.Day && (alert.ClosedAt is not { } closed || calendar.DayOf(closed) >= day.Day))
                .Select(alert => calendar.DayOf(alert.OnsetAt)).DefaultIfEmpty(day.Day).Min();
            var before = normal.FindLast(earlier => earlier.Day <= onset) ?? normal.LastOrDefault();
            yield return day with { Normal = before?.Normal, Spread = before?.Spread };
        }
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

    private sealed record CrossedDay(DateOnly Day, (PerLeg<LegLoad> Legs, PassageAssessment Told)[] Passages)
    {
        public bool IsFrozen => Passages.Any(passage => passage.Told.Baseline == BaselineState.Frozen);
    }
}
