using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>The feet whose recovery is followed, told to detection in its own words.</summary>
public static class TreatedFeet
{
    /// <summary>How a cow walks when sound is told from so long before onset.</summary>
    public static TimeSpan SoundBefore { get; } = TimeSpan.FromDays(new RecoveryOptions().SoundDaysBefore);

    /// <summary>
    /// One for each sitting at which a foot was treated, with what was done to it until it was treated anew. Sittings belong to the
    /// first finding that treated.
    /// </summary>
    /// <param name="findings">Findings of any cows, in any order, each id once.</param>
    /// <param name="alerts">Alerts, in any order: the one on that leg tells when she began to spare it.</param>
    /// <param name="removals">Wraps and blocks that the farm itself took off; null for none.</param>
    public static ImmutableArray<TreatedFoot> Of(IEnumerable<Finding> findings, IEnumerable<Alert> alerts, IEnumerable<FarmRemoval>? removals = null)
    {
        var byLeg = alerts.ToLookup(alert => alert.Cow, StringComparer.Ordinal);
        var byFoot = (removals ?? []).ToLookup(removal => (removal.Finding.Cow, removal.Finding.Foot));
        return
        [
            .. findings.GroupBy(finding => (finding.Cow, finding.Foot))
                .OrderBy(foot => foot.Key.Cow, NaturalOrder.Comparer).ThenBy(foot => foot.Key.Foot)
                .SelectMany(foot => OfFoot([.. foot.Order(Finding.ByTime)], [.. byLeg[foot.Key.Cow].Where(alert => IsOn(alert, foot.Key.Foot))], [.. byFoot[foot.Key]])),
        ];
    }

    private static IEnumerable<TreatedFoot> OfFoot(Finding[] findings, Alert[] alerts, FarmRemoval[] removals)
    {
        var starts = new List<Finding>();
        foreach (var finding in findings.Where(finding => finding.IsTreatment()))
        {
            var after = starts.Count == 0 ? TimeSpan.MaxValue : finding.At - starts[^1].At;
            if (after > FootWork.UnderWay || (after > FootWork.OneSession && finding.BeginsAnew()))
                starts.Add(finding);
        }

        for (var i = 0; i < starts.Count; i++)
        {
            var start = starts[i];
            DateTimeOffset? again = i + 1 < starts.Count ? starts[i + 1].At : null;
            yield return new TreatedFoot
            {
                FindingId = start.Id,
                Cow = start.Cow,
                Foot = start.Foot,
                TreatedAt = start.At,
                TreatedAgainAt = again,
                OnsetAt = Onset(start, i > 0 ? starts[i - 1] : null, alerts),
                // What is worn from before still masks: it is told as put on when it was.
                Marks =
                [
                    .. findings.Where(finding => again is null || finding.At < again).SelectMany(Marks),
                    .. removals.Where(removal => again is null || removal.At < again)
                        .Select(removal => new RecoveryMark(removal.At, removal.What == FindingAction.WrapOff ? RecoveryMarkKind.WrapOff : RecoveryMarkKind.BlockOff)),
                ],
            };
        }
    }

    // The newest alert on that leg that was not over long before the treatment; a foot treated again, with no new alert between,
    // is the same trouble.
    private static DateTimeOffset Onset(Finding start, Finding? before, Alert[] alerts) => alerts
        .Where(alert => alert.RaisedAt <= start.At && (alert.ClosedAt is not { } closed || closed > start.At - TimeSpan.FromDays(7) || before is not null && before.At <= closed.AddDays(7)))
        .Select(alert => (DateTimeOffset?)alert.OnsetAt)
        .Max() ?? start.At;

    private static bool IsOn(Alert alert, Leg foot) => alert.Pattern switch
    {
        AlertPattern.BothHind => !foot.IsFore(),
        AlertPattern.BothFore => foot.IsFore(),
        _ => alert.Leg == foot,
    };

    private static IEnumerable<RecoveryMark> Marks(Finding finding)
    {
        foreach (var action in finding.Actions)
        {
            RecoveryMarkKind? what = action switch
            {
                FindingAction.Block => RecoveryMarkKind.Block,
                FindingAction.BlockOff => RecoveryMarkKind.BlockOff,
                FindingAction.BlockLost => RecoveryMarkKind.BlockLost,
                FindingAction.Wrap => RecoveryMarkKind.Wrap,
                FindingAction.WrapOff => RecoveryMarkKind.WrapOff,
                FindingAction.PainRelief => RecoveryMarkKind.PainRelief,
                _ => null,
            };
            if (what is { } kind)
                yield return new RecoveryMark(finding.At, kind);
        }
    }
}
