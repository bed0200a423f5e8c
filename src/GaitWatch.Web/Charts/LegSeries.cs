using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>A leg's days and what happened to it.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Days">The days she crossed, or the weeks, oldest first.</param>
/// <param name="Marks">Onsets, flags, findings, closings.</param>
/// <param name="Worn">Times with a block or wrap on the foot.</param>
public sealed record LegSeries(Leg Leg, ImmutableArray<LegDay> Days, ImmutableArray<ChartMark> Marks, ImmutableArray<CareSpan> Worn)
{
    /// <summary>Puts the passages that were evidence together, a point for so many days.</summary>
    internal static ImmutableArray<LegSeries> Of(
        IEnumerable<LegEvidence> passages, FarmCalendar calendar, int daysAPoint, Func<Leg, IEnumerable<ChartMark>> marks, Func<Leg, IEnumerable<CareSpan>> worn)
    {
        var days = passages
            .GroupBy(passage => calendar.DayOf(passage.EndedAt).DayNumber / daysAPoint)
            .OrderBy(day => day.Key)
            .Select(day => (Day: DateOnly.FromDayNumber((day.Key * daysAPoint) + (daysAPoint / 2)), Passages: day.ToArray()))
            .ToArray();
        return [.. Legs.All.Select(leg => new LegSeries(leg, [.. days.Select(day => Day(leg, day.Day, day.Passages)).OfType<LegDay>()], [.. marks(leg)], [.. worn(leg)]))];
    }

    private static LegDay? Day(Leg leg, DateOnly day, LegEvidence[] passages)
    {
        var share = new Mean();
        var normal = new Mean();
        var spread = new Mean();
        var evidence = 0.0;
        foreach (ref readonly var passage in passages.AsSpan())
        {
            share.Add(passage.Share[leg]);
            normal.Add(passage.Expected?[leg]);
            spread.Add(passage.Spread?[leg]);
            evidence = Math.Max(evidence, passage.Evidence[leg]);
        }

        return share.Value is { } mean ? new LegDay(day, share.Count, mean, normal.Value, spread.Value, evidence) : null;
    }

    private struct Mean
    {
        private double _sum;

        public int Count { get; private set; }

        public readonly double? Value => Count == 0 ? null : _sum / Count;

        public void Add(double? value)
        {
            if (value is not { } known)
                return;
            _sum += known;
            Count++;
        }
    }
}
