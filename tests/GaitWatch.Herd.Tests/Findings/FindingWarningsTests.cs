using GaitWatch.Gait;

namespace GaitWatch.Herd.Tests;

/// <summary>What can happen and is unsafe: it is kept, and told at once.</summary>
public sealed class FindingWarningsTests
{
    private static readonly Finding Blocked = Some.Finding("a", actions: FindingAction.Block) with { Claw = Claw.Outer, BlockClaw = Claw.Inner };

    [Fact]
    public void A_block_on_the_sound_claw_of_the_same_foot_is_right() => Assert.Empty(FindingWarnings.Of(Blocked, []));

    [Fact]
    public void A_block_on_the_claw_with_the_lesion_is_unsafe() => Assert.Equal(
        "The block is on the outer claw, which has a lesion (sole ulcer): it belongs on the sound claw. Change it, or look at her within 3 days.",
        Assert.Single(FindingWarnings.Of(Blocked with { BlockClaw = Claw.Outer }, [])).Sentence);

    [Fact]
    public void The_lesion_may_be_told_in_another_finding_of_the_same_sitting()
    {
        var other = Some.Finding("b", lesion: Lesion.WhiteLineAbscess) with { Claw = Claw.Inner, At = Blocked.At.AddMinutes(10) };
        Assert.Contains("both claws are sore", FindingWarnings.UnsafeBlock(Blocked, [other]), StringComparison.Ordinal);
        Assert.Contains("inner claw, which has a lesion (white line abscess)", FindingWarnings.UnsafeBlock(Blocked with { Claw = null }, [other]), StringComparison.Ordinal);
        Assert.Null(FindingWarnings.UnsafeBlock(Blocked, [other with { Foot = Leg.Lh }]));
        Assert.Null(FindingWarnings.UnsafeBlock(Blocked, [other with { At = Blocked.At.AddDays(-20) }]));
        Assert.Null(FindingWarnings.UnsafeBlock(Blocked, [other with { Lesion = Lesion.AsymmetricClaws }]));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void No_block_where_both_claws_are_sore(bool bySign)
    {
        var finding = bySign ? Blocked with { Signs = [VetSign.BothClawsSore] } : Blocked with { Claw = Claw.Both };
        Assert.StartsWith("A block was put on although both claws are sore", FindingWarnings.UnsafeBlock(finding, []), StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_block_on_the_other_claw_is_unsafe_unless_the_first_came_off()
    {
        var first = Some.Finding("old", day: -6, actions: FindingAction.Block) with { Claw = Claw.Inner, BlockClaw = Claw.Outer };
        Assert.StartsWith("A block is already worn on the outer claw", FindingWarnings.UnsafeBlock(Blocked, [first]), StringComparison.Ordinal);
        Assert.Null(FindingWarnings.UnsafeBlock(Blocked with { Actions = [FindingAction.BlockOff, FindingAction.Block] }, [first]));
        Assert.Null(FindingWarnings.UnsafeBlock(Blocked, [first, Some.Finding("lost", day: -2, actions: FindingAction.BlockLost)]));
    }

    [Fact]
    public void Signs_ask_for_the_veterinarian_and_medicines_for_a_date()
    {
        var warnings = FindingWarnings.Of(Blocked with { Signs = [VetSign.BleedingDoesNotStop], Actions = [FindingAction.Antibiotic], BlockClaw = null }, []);
        Assert.Equal(["call-veterinarian", "no-withdrawal-date"], warnings.Select(warning => warning.WireName));
        Assert.Equal("Call the veterinarian today: bleeding that does not stop.", warnings[0].Sentence);
        Assert.Empty(FindingWarnings.Of(Some.Finding("a", actions: FindingAction.PainRelief) with { WithdrawalUntil = Some.Day0 }, []));
    }
}
