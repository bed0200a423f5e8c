using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class FootStateTests
{
    [Fact]
    public void Block_and_wrap_are_worn_until_off_or_lost()
    {
        var on = Some.Finding("a", 0, actions: [FindingAction.Block, FindingAction.Wrap]) with { BlockClaw = Claw.Inner };
        var state = FootState.Of([on]);
        Assert.Equal((Some.At(0), Claw.Inner, Some.At(0)), (state.BlockSince, state.BlockClaw, state.WrapSince));
        state = FootState.Of([on, Some.Finding("b", 3, actions: FindingAction.WrapOff)]);
        Assert.NotNull(state.BlockSince);
        Assert.Null(state.WrapSince);
        Assert.Null(FootState.Of([on, Some.Finding("b", 9, actions: FindingAction.BlockLost)]).BlockSince);
        Assert.Equal(Some.At(9), FootState.Of([on, Some.Finding("b", 9, actions: [FindingAction.BlockLost, FindingAction.Block])]).BlockSince);
    }

    [Theory]
    [InlineData(MStage.M2, true)]
    [InlineData(MStage.M41, true)]
    [InlineData(MStage.M3, false)]
    [InlineData(null, true)]
    public void Digital_dermatitis_is_active_by_its_newest_stage(MStage? stage, bool active)
    {
        var finding = Some.Finding("a", lesion: Lesion.DigitalDermatitis) with { MStage = stage };
        Assert.Equal(active, FootState.Of([finding]).HasActiveDermatitis);
        Assert.False(FootState.Of([finding, Some.Finding("b", 20, Lesion.None)]).HasActiveDermatitis);
        Assert.Equal(active, FootState.Of([finding, Some.Finding("b", 20)]).HasActiveDermatitis);
    }

    [Fact]
    public void Nothing_on_one_claw_does_not_hide_the_lesion_on_the_other()
    {
        var lesion = Some.Finding("a");
        Assert.Equal("a", FootState.Of([lesion, Some.Finding("b", 0, Lesion.None) with { At = lesion.At.AddMinutes(3) }]).Last!.Id);
        Assert.Equal("b", FootState.Of([lesion, Some.Finding("b", 30, Lesion.None)]).Last!.Id);
    }

    [Fact]
    public void The_order_of_findings_changes_nothing()
    {
        var actions = Enum.GetValues<FindingAction>();
        var findings = Enumerable.Range(0, 13).Select(i => Some.Finding($"{i:00}", i / 3, actions: [actions[i], actions[(i * 5) % 13]])).ToArray();
        var expected = FootState.Of(findings);
        Gen.Shuffle(findings).Sample(shuffled => FootState.Of(shuffled) == expected);
    }

    [Fact]
    public void Detection_is_told_of_every_foot_that_was_in_hand()
    {
        var events = FootCare.Events([Some.Finding("a", actions: FindingAction.Block), Some.Finding("b", 9, Lesion.None, Leg.Lh, FindingAction.BlockLost)]).ToArray();
        Assert.Equal(
            [new FootTreated("417", Some.At(0), Leg.Rh, true, false), new FootTreated("417", Some.At(9), Leg.Lh, false, true)],
            events.Select(input => input.Event));
        Assert.Equal(["417/finding/a", "417/finding/b"], events.Select(input => input.Key));
    }

    [Fact]
    public void A_finding_is_said_as_a_person_would() => Assert.Equal(
        "foreign body, stone of 6 mm, outer claw, zone 5, moderate: trimmed, foreign body out, block on inner claw",
        (Some.Finding("a", lesion: Lesion.ForeignBody, actions: [FindingAction.Block, FindingAction.Trimmed, FindingAction.ForeignBodyRemoved]) with
        {
            ForeignBody = new ForeignBody("stone", 6), Claw = Claw.Outer, Zone = 5, Severity = 2, BlockClaw = Claw.Inner,
        }).InWords());
}
