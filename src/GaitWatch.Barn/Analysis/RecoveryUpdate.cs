using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>
/// Keeps the recoveries in the store in step with what they rest on: a cow's passages, her alerts, what was found in her feet and done
/// to them. What is kept is what a judgement from scratch would say.
/// </summary>
internal static class RecoveryUpdate
{
    /// <summary>Judges again the treated feet of whom something has changed.</summary>
    /// <param name="change">The change; assessments and alerts are written already.</param>
    /// <param name="known">What people have entered, this change included.</param>
    /// <param name="walked">Cows whose passages or alerts have changed, and from when on.</param>
    /// <param name="treated">Cows in whose feet something was found or done that was not known; may repeat.</param>
    /// <param name="options">Settings.</param>
    public static void Run(
        StateChange change, KnownEvents known, IReadOnlyDictionary<string, DateTimeOffset> walked, IEnumerable<string> treated, RecoveryOptions options)
    {
        var from = new Dictionary<string, DateTimeOffset>(walked, StringComparer.Ordinal);
        if (change.RecoveriesVersion != RecoveryAssessor.Version)
        {
            // A store from before, or a method from before: every foot ever treated.
            treated = change.CowsWithRecoveries().Concat(known.Findings.Findings.Select(finding => finding.Cow));
            change.RecoveriesVersion = RecoveryAssessor.Version;
        }

        foreach (var cow in treated)
            from[cow] = DateTimeOffset.MinValue;
        var removals = known.Removals.ToLookup(removal => removal.Finding.Cow, StringComparer.Ordinal);
        foreach (var (cow, since) in from)
        {
            var findings = known.Findings.OfCow(cow).ToArray();
            // Nothing was ever done to her feet, nor has a finding been corrected away.
            if (findings.Length == 0 && since > DateTimeOffset.MinValue)
                continue;
            var feet = TreatedFeet.Of(findings, change.AlertsOf(cow), removals[cow]);
            change.WriteRecoveries(
                cow, feet.Select(foot => foot.FindingId).ToHashSet(StringComparer.Ordinal),
                feet.Where(foot => foot.FollowedUntil(options) >= since).Select(foot => Judge(change, foot, options)));
        }
    }

    private static RecoveryAssessment Judge(StateChange change, TreatedFoot foot, RecoveryOptions options)
    {
        var until = foot.FollowedUntil(options);
        return RecoveryAssessor.Assess(foot, change.Assessed(foot.Cow, foot.OnsetAt - TreatedFeet.SoundBefore, until), until, options);
    }
}
