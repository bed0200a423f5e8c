using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>
/// What is unsafe in a finding, though it can happen. Common practice, no source: a block goes on a sound claw and takes the
/// weight off the sore one; where both are sore there is no block. The farm's veterinarian decides.
/// </summary>
public static class FindingWarnings
{
    /// <summary>The warnings of one finding, the most pressing first.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="others">Other findings of the same cow, in any order; those of another foot or time do not matter.</param>
    public static ImmutableArray<FindingWarning> Of(Finding finding, IEnumerable<Finding> others)
    {
        var warnings = ImmutableArray.CreateBuilder<FindingWarning>();
        foreach (var sign in finding.Signs)
            warnings.Add(new FindingWarning(FindingWarningKind.CallVeterinarian, "signs", sign.Advice()));
        if (UnsafeBlock(finding, others) is { } sentence)
            warnings.Add(new FindingWarning(FindingWarningKind.UnsafeBlock, "blockClaw", sentence));
        if (finding.WithdrawalUntil is null && (finding.Did(FindingAction.Antibiotic) || finding.Did(FindingAction.PainRelief)))
        {
            warnings.Add(new FindingWarning(FindingWarningKind.NoWithdrawalDate, "withdrawalUntil",
                "A medicine was given and no withdrawal date entered: ask the veterinarian for milk and meat, and enter the date."));
        }

        return warnings.ToImmutable();
    }

    /// <summary>Why a finding's block is unsafe; null when it is not, or no block was put on.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="others">Other findings of the same cow, in any order.</param>
    public static string? UnsafeBlock(Finding finding, IEnumerable<Finding> others)
    {
        if (!finding.Did(FindingAction.Block))
            return null;
        var sameFoot = others.Where(other => other.Cow == finding.Cow && other.Foot == finding.Foot && other.Id != finding.Id).ToArray();
        var together = sameFoot.Where(other => (other.At - finding.At).Duration() <= FootWork.OneSession).Append(finding).ToArray();
        if (together.Any(other => other.Signs.Contains(VetSign.BothClawsSore)) || together.Any(other => IsSore(other, Claw.Inner)) && together.Any(other => IsSore(other, Claw.Outer)))
            return "A block was put on although both claws are sore: no claw is sound to carry it. Take it off, call the veterinarian, and look at her within 3 days.";
        if (finding.BlockClaw is not { } blocked)
            return null;
        if (together.FirstOrDefault(other => IsSore(other, blocked)) is { } sore)
            return $"The block is on the {blocked.WireName()} claw, which has a lesion ({sore.Lesion.InWords()}): it belongs on the sound claw. Change it, or look at her within 3 days.";
        var worn = FootState.Of(sameFoot.Where(other => other.At < finding.At)).BlockClaw;
        if (worn is { } before && before != blocked && !together.Any(Undone))
            return $"A block is already worn on the {before.WireName()} claw: with both claws blocked none is spared. Take one off, or look at her within 3 days.";
        return null;
    }

    private static bool Undone(Finding finding) => finding.Did(FindingAction.BlockOff) || finding.Did(FindingAction.BlockLost);

    // The shape of a claw is no sore; a stage of digital dermatitis belongs to the skin.
    private static bool IsSore(Finding finding, Claw claw) =>
        (finding.Claw == claw || finding.Claw == Claw.Both)
        && finding.Lesion is not Lesion.None
        && finding.Lesion.Site() is not (LesionSite.ClawShape or LesionSite.Skin);
}
