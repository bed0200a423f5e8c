using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>Wraps and blocks that the farm took off by itself: what was put on by a finding is worn no longer, though no finding says so.</summary>
public static class FarmRemovals
{
    /// <summary>The removals, by time; they depend on the set of writes alone.</summary>
    /// <param name="writes">Every write; kinds that do not matter here are passed over.</param>
    /// <param name="findings">The findings as they read now, each id once.</param>
    public static ImmutableArray<FarmRemoval> Of(IEnumerable<FarmWrite> writes, IEnumerable<Finding> findings)
    {
        var done = writes.OfType<FollowUpDoneWrite>()
            .GroupBy(write => write.FollowUpId, StringComparer.Ordinal)
            .ToDictionary(group => group.Key, group => group.Min(write => write.At), StringComparer.Ordinal);
        if (done.Count == 0)
            return [];
        var all = findings.ToArray();
        var byFoot = all.ToLookup(finding => (finding.Cow, finding.Foot));
        return
        [
            .. all.Where(finding => finding.Did(FindingAction.Wrap)).SelectMany(finding => Off(finding, FollowUpCause.Wrap, FindingAction.Wrap, FindingAction.WrapOff))
                .Concat(all.Where(finding => finding.Did(FindingAction.Block)).SelectMany(finding => Off(finding, FollowUpCause.BlockWorn, FindingAction.Block, FindingAction.BlockOff)))
                .OrderBy(removal => removal.At).ThenBy(removal => removal.Finding.Id, StringComparer.Ordinal).ThenBy(removal => removal.What),
        ];

        // Where another was put on since, it is that one the foot wears, and its own follow-up tells of its end.
        IEnumerable<FarmRemoval> Off(Finding finding, FollowUpCause cause, FindingAction on, FindingAction off)
        {
            if (done.TryGetValue(FollowUp.MakeId(cause, finding.Id), out var at)
                && !byFoot[(finding.Cow, finding.Foot)].Any(other => other.At > finding.At && other.At <= at && other.Did(on)))
                yield return new FarmRemoval(finding, at, off);
        }
    }
}
