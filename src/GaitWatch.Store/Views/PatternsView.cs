using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>Where in the herd and on the foot trouble comes.</summary>
public sealed record PatternsView
{
    /// <summary>The first day.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The day after the last.</summary>
    public required DateOnly To { get; init; }

    /// <summary>By pen at the time, cows without one last.</summary>
    public required IReadOnlyList<PenCountView> ByPen { get; init; }

    /// <summary>By leg: <c>lf rf lh rh</c>.</summary>
    public required IReadOnlyList<LegCountView> ByLeg { get; init; }

    /// <summary>By zone of the claw map; not said last.</summary>
    public required IReadOnlyList<ZoneCountView> ByZone { get; init; }

    /// <summary>By lesion, the most frequent first.</summary>
    public required IReadOnlyList<LesionCountView> ByLesion { get; init; }

    /// <summary>By the farm's month, oldest first, every month of the time.</summary>
    public required IReadOnlyList<MonthCountView> ByMonth { get; init; }

    /// <summary>More of a kind from one pen within a few days than chance brings, the least likely first.</summary>
    public required IReadOnlyList<ClusterView> Clusters { get; init; }

    /// <summary>How patterns look on the wire.</summary>
    public static PatternsView Of(HerdPatterns patterns, Period period) => new()
    {
        From = period.From,
        To = period.To,
        ByPen =
        [
            .. patterns.ByPen.Select(count => new PenCountView(
                count.Of.Length == 0 ? null : count.Of, patterns.CowsInPen.GetValueOrDefault(count.Of), count.Cases, count.Alerts!.Value)),
        ],
        ByLeg = [.. patterns.ByLeg.Select(count => new LegCountView(GaitWatch.Gait.Legs.WireName(count.Of), count.Cases, count.Alerts!.Value))],
        ByZone = [.. patterns.ByZone.Select(count => new ZoneCountView(count.Of, count.Cases))],
        ByLesion = [.. patterns.ByLesion.Select(count => new LesionCountView(count.Of.WireName(), count.Of.InWords(), count.Cases))],
        ByMonth = [.. patterns.ByMonth.Select(count => new MonthCountView(count.Of, count.Cases, count.Alerts!.Value))],
        Clusters =
        [
            .. patterns.Clusters.Select(cluster => new ClusterView(
                cluster.Pen, cluster.Group.InWords(2), cluster.From, cluster.To, cluster.Count, cluster.Expected, cluster.PValue, cluster.Sentence)),
        ],
    };
}

/// <summary>Counts of a pen.</summary>
/// <param name="Pen">The pen; null for cows without one.</param>
/// <param name="Cows">Cows in it at the end.</param>
/// <param name="Cases">New cases of a lesion.</param>
/// <param name="Alerts">Flags raised.</param>
public sealed record PenCountView(string? Pen, int Cows, int Cases, int Alerts);

/// <summary>Counts of a leg.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Cases">New cases of a lesion.</param>
/// <param name="Alerts">Flags raised.</param>
public sealed record LegCountView(string Leg, int Cases, int Alerts);

/// <summary>Counts of a zone of the claw map.</summary>
/// <param name="Zone">0 to 12; null where none was said.</param>
/// <param name="Cases">New cases of a lesion.</param>
public sealed record ZoneCountView(int? Zone, int Cases);

/// <summary>Counts of a lesion.</summary>
/// <param name="Lesion">As findings name it.</param>
/// <param name="LesionInWords">In words.</param>
/// <param name="Cases">New cases.</param>
public sealed record LesionCountView(string Lesion, string LesionInWords, int Cases);

/// <summary>Counts of a month.</summary>
/// <param name="Month">Its first day.</param>
/// <param name="Cases">New cases of a lesion.</param>
/// <param name="Alerts">Flags raised.</param>
public sealed record MonthCountView(DateOnly Month, int Cases, int Alerts);

/// <summary>A cluster of lesions.</summary>
/// <param name="Pen">The pen.</param>
/// <param name="Lesions">The kind, in words.</param>
/// <param name="From">Day of the first.</param>
/// <param name="To">Day of the last.</param>
/// <param name="Count">How many new cases.</param>
/// <param name="Expected">How many were to be expected there in so many days.</param>
/// <param name="PValue">How likely chance alone brings such a cluster anywhere in the herd.</param>
/// <param name="Sentence">What is seen and where to look.</param>
public sealed record ClusterView(string Pen, string Lesions, DateOnly From, DateOnly To, int Count, double Expected, double PValue, string Sentence);
