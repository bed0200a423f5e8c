using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>What detection has to know of work on feet, told as its own events.</summary>
public static class FootCare
{
    /// <summary>
    /// One event for each finding, also where nothing was done: the foot was looked at. Each has a key of its own, so that a set
    /// of findings gives a set of events.
    /// </summary>
    public static IEnumerable<CowEventInput> Events(IEnumerable<Finding> findings) => findings
        .Select(finding => new CowEventInput(
            new FootTreated(
                finding.Cow, finding.At, finding.Foot, finding.Did(FindingAction.Block),
                finding.Did(FindingAction.BlockOff) || finding.Did(FindingAction.BlockLost)),
            $"{finding.Cow}/finding/{finding.Id}"));

    /// <summary>
    /// One event for each block that the farm itself took off, which changes how she walks. A wrap that comes off changes it little
    /// enough that detection need not hear of it.
    /// </summary>
    public static IEnumerable<CowEventInput> Events(IEnumerable<FarmRemoval> removals) => removals
        .Where(removal => removal.What == FindingAction.BlockOff)
        .Select(removal => new CowEventInput(
            new FootTreated(removal.Finding.Cow, removal.At, removal.Finding.Foot, false, true),
            $"{removal.Finding.Cow}/block-off/{removal.Finding.Id}"));

    /// <summary>The state of each foot of one cow at an instant.</summary>
    /// <param name="findings">Findings of one cow, in any order, each id once.</param>
    /// <param name="asOf">Later findings are not looked at.</param>
    public static PerLeg<FootState> StateOf(IEnumerable<Finding> findings, DateTimeOffset asOf)
    {
        var known = findings.Where(finding => finding.At <= asOf).ToImmutableArray();
        return PerLeg.From(foot => FootState.Of(known.Where(finding => finding.Foot == foot)));
    }
}
