using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Where in the herd and on the foot trouble comes, by counts: what was found, and what was flagged.</summary>
public sealed record HerdPatterns
{
    /// <summary>By the pen in which the cow was then; an empty name for cows without one.</summary>
    public required ImmutableArray<PatternCount<string>> ByPen { get; init; }

    /// <summary>Cows in each pen at the end of the time: what the counts are to be held against.</summary>
    public required ImmutableDictionary<string, int> CowsInPen { get; init; }

    /// <summary>By leg, all four.</summary>
    public required ImmutableArray<PatternCount<Leg>> ByLeg { get; init; }

    /// <summary>By zone of the claw map, those that occur; null where no zone was said. Alerts know no zone.</summary>
    public required ImmutableArray<PatternCount<int?>> ByZone { get; init; }

    /// <summary>By lesion, the most frequent first. Alerts know no lesion.</summary>
    public required ImmutableArray<PatternCount<Lesion>> ByLesion { get; init; }

    /// <summary>By the farm's month, each of the time, named by its first day.</summary>
    public required ImmutableArray<PatternCount<DateOnly>> ByMonth { get; init; }

    /// <summary>What is found closer together than chance brings.</summary>
    public required ImmutableArray<LesionCluster> Clusters { get; init; }

    /// <summary>The patterns of a time.</summary>
    /// <param name="findings">Every finding, in any order, also from before.</param>
    /// <param name="alerts">Alerts, in any order; those raised in the time count.</param>
    /// <param name="register">Who was in which pen.</param>
    /// <param name="from">The first day.</param>
    /// <param name="to">The day after the last.</param>
    /// <param name="calendar">The farm's days.</param>
    public static HerdPatterns Of(
        IReadOnlyCollection<Finding> findings, IEnumerable<Alert> alerts, HerdRegister register, DateOnly from, DateOnly to, FarmCalendar calendar)
    {
        bool IsIn(DateTimeOffset at) => calendar.DayOf(at) is var day && day >= from && day < to;
        var cases = LesionCase.Of(findings, register).Where(found => IsIn(found.At)).ToArray();
        // One that only asks to be watched was no flag.
        var flags = alerts.Where(alert => alert.Urgency != Urgency.Watch && IsIn(alert.RaisedAt)).ToArray();
        return new HerdPatterns
        {
            ByPen =
            [
                .. Count(cases.Select(found => found.Pen ?? ""), flags.Select(alert => register.At(alert.Cow, alert.RaisedAt)?.Pen ?? ""))
                    .OrderBy(count => count.Of.Length == 0).ThenBy(count => count.Of, NaturalOrder.Comparer),
            ],
            CowsInPen = register.Cows.Where(cow => !FollowUpPlan.HasLeft(cow, to.AddDays(-1), register))
                .CountBy(cow => register.At(cow, calendar.StartOf(to))?.Pen ?? "", StringComparer.Ordinal)
                .ToImmutableDictionary(StringComparer.Ordinal),
            ByLeg = [.. Legs.All.Select(leg => new PatternCount<Leg>(leg, cases.Count(found => found.Foot == leg), flags.Count(alert => alert.Leg == leg)))],
            ByZone =
            [
                .. cases.GroupBy(found => found.Zone).Select(zone => new PatternCount<int?>(zone.Key, zone.Count(), null))
                    .OrderBy(count => count.Of is null).ThenBy(count => count.Of),
            ],
            ByLesion =
            [
                .. cases.GroupBy(found => found.Lesion).Select(lesion => new PatternCount<Lesion>(lesion.Key, lesion.Count(), null))
                    .OrderByDescending(count => count.Cases).ThenBy(count => count.Of.WireName(), StringComparer.Ordinal),
            ],
            ByMonth =
            [
                .. FarmMonths.Between(from, to).Select(month => new PatternCount<DateOnly>(
                    month, cases.Count(found => FarmMonths.Of(calendar.DayOf(found.At)) == month), flags.Count(alert => FarmMonths.Of(calendar.DayOf(alert.RaisedAt)) == month))),
            ],
            Clusters = LesionClusters.Of(findings, register, from, to, calendar, new LesionClusterOptions()),
        };
    }

    private static IEnumerable<PatternCount<string>> Count(IEnumerable<string> ofCases, IEnumerable<string> ofAlerts)
    {
        var (cases, alerts) = (ofCases.CountBy(pen => pen).ToDictionary(), ofAlerts.CountBy(pen => pen).ToDictionary());
        return cases.Keys.Union(alerts.Keys, StringComparer.Ordinal).Select(pen => new PatternCount<string>(pen, cases.GetValueOrDefault(pen), alerts.GetValueOrDefault(pen)));
    }
}
