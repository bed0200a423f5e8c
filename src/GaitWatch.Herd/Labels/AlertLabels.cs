using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Labels alerts by what was found when the feet were lifted, so that the herd sees how often a flag is true.</summary>
public static class AlertLabels
{
    /// <summary>
    /// How long after the foot was first lifted a further look still belongs to the alert: what lies deep is often found the second
    /// time. Common practice, no source.
    /// </summary>
    public static TimeSpan SecondLook { get; } = TimeSpan.FromDays(7);

    /// <summary>
    /// The alerts whose foot was lifted, by <see cref="Alert.RaisedAt"/>. One closed by eye, by the load, or because the cow left
    /// counts neither way and has no label.
    /// </summary>
    /// <param name="alerts">Alerts, in any order.</param>
    /// <param name="findings">Findings, in any order, each id once.</param>
    /// <param name="calendar">The farm's days: a finding of the day on which the alert was closed still belongs to it.</param>
    public static ImmutableArray<AlertLabel> Of(IEnumerable<Alert> alerts, IEnumerable<Finding> findings, FarmCalendar calendar)
    {
        var byCow = findings.ToLookup(finding => finding.Cow, StringComparer.Ordinal);
        return
        [
            .. alerts.DistinctBy(alert => alert.Id)
                .Select(alert => Of(alert, [.. byCow[alert.Cow].Where(finding => Belongs(finding, alert, calendar)).Order(Finding.ByTime)]))
                .OfType<AlertLabel>()
                .OrderBy(label => label.Alert.RaisedAt).ThenBy(label => label.Alert.Id, StringComparer.Ordinal),
        ];
    }

    private static bool Belongs(Finding finding, Alert alert, FarmCalendar calendar) =>
        finding.At >= alert.RaisedAt && (alert.ClosedAt is not { } closed || finding.At < calendar.EndOf(calendar.DayOf(closed)));

    private static AlertLabel? Of(Alert alert, Finding[] findings)
    {
        var named = findings.Where(finding => IsNamed(alert, finding.Foot)).ToArray();
        // Time runs from the first lift of the named foot, or, where that was never lifted, of the one that explains the alert.
        var first = named.FirstOrDefault() ?? findings.FirstOrDefault(LameLesion.Explains);
        if (first is null)
        {
            return alert is { CloseReason: AlertCloseReason.LiftedNothingFound, ClosedAt: { } closedAt }
                ? new AlertLabel(alert, LabelKind.NothingFound, closedAt, [])
                : null;
        }

        var looked = findings.Where(finding => finding.At - first.At <= SecondLook).ToArray();
        var onLeg = looked.Where(finding => IsNamed(alert, finding.Foot)).ToArray();
        var elsewhere = looked.Where(finding => !IsNamed(alert, finding.Foot)).ToArray();
        return Label(LabelKind.Right, onLeg.Where(LameLesion.Explains))
            ?? Label(LabelKind.OtherLeg, elsewhere.Where(LameLesion.Explains))
            ?? Label(LabelKind.Minor, onLeg.Where(finding => finding.Lesion != Lesion.None))
            ?? Label(LabelKind.NothingFound, onLeg);

        AlertLabel? Label(LabelKind kind, IEnumerable<Finding> by) => by.ToArray() is { Length: > 0 } found
            ? new AlertLabel(alert, kind, found[0].At, [.. found.Select(finding => finding.Id)])
            : null;
    }

    private static bool IsNamed(Alert alert, Leg foot) => alert.Pattern switch
    {
        AlertPattern.BothHind => !foot.IsFore(),
        AlertPattern.BothFore => foot.IsFore(),
        _ => foot == alert.Leg,
    };
}
