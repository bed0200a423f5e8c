using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

/// <summary>What the farm took off a foot and told by doing a follow-up is worn no longer, wherever that matters.</summary>
public sealed class FarmRemovalTests
{
    private static readonly Finding Treated = Some.Finding("a", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Block, FindingAction.Wrap) with { BlockClaw = Claw.Inner };

    [Fact]
    public void Nothing_done_takes_nothing_off() => Assert.Empty(FarmRemovals.Of([Treated.Written()], [Treated]));

    [Fact]
    public void A_wrap_and_a_block_come_off_when_the_farm_says_so()
    {
        var removals = FarmRemovals.Of([Done(FollowUpCause.Wrap, 3), Done(FollowUpCause.BlockWorn, 26)], [Treated]);
        Assert.Equal([(FindingAction.WrapOff, Some.At(3)), (FindingAction.BlockOff, Some.At(26))], removals.Select(removal => (removal.What, removal.At)));

        var state = FootState.Of([Treated], removals);
        Assert.Null(state.WrapSince);
        Assert.Null(state.BlockSince);
        Assert.Null(state.BlockClaw);
        Assert.Equal(Treated.At, FootState.Of([Treated], removals.Take(1)).BlockSince);

        var foot = Assert.Single(TreatedFeet.Of([Treated], [], removals));
        Assert.Equal(
            [RecoveryMarkKind.Block, RecoveryMarkKind.Wrap, RecoveryMarkKind.WrapOff, RecoveryMarkKind.BlockOff],
            foot.Marks.OrderBy(mark => mark.At).ThenBy(mark => mark.What).Select(mark => mark.What));
    }

    [Fact]
    public void Detection_hears_of_a_block_that_came_off()
    {
        var events = WrittenEvents.Of([Treated.Written(), Done(FollowUpCause.Wrap, 3), Done(FollowUpCause.BlockWorn, 26)]);
        Assert.Equal(2, events.Length);
        var off = Assert.IsType<FootTreated>(events.MaxBy(input => input.At)!.Event);
        Assert.Equal((Leg.Rh, false, true, Some.At(26)), (off.Foot!.Value, off.BlockOn, off.BlockOff, off.At));
    }

    [Fact]
    public void A_block_put_on_since_is_not_taken_off_by_word_of_the_earlier_one()
    {
        var again = Some.Finding("b", 20, Lesion.SoleUlcer, Leg.Rh, FindingAction.Block) with { BlockClaw = Claw.Inner };
        Assert.Empty(FarmRemovals.Of([Done(FollowUpCause.BlockWorn, 26)], [Treated, again]));
        // On another foot it is another block.
        Assert.Single(FarmRemovals.Of([Done(FollowUpCause.BlockWorn, 26)], [Treated, again with { Foot = Leg.Lh }]));
    }

    [Fact]
    public void Order_and_copies_of_what_was_written_do_not_matter()
    {
        FarmWrite[] writes = [Treated.Written(), Done(FollowUpCause.Wrap, 3), Done(FollowUpCause.Wrap, 4), Done(FollowUpCause.BlockWorn, 26), Done(FollowUpCause.BlockWorn, 26)];
        var expected = FarmRemovals.Of(writes, [Treated]);
        Assert.Equal(Some.At(3), expected[0].At);
        Gen.Shuffle(writes).Sample(shuffled => FarmRemovals.Of(shuffled, [Treated]).SequenceEqual(expected));
    }

    private static FollowUpDoneWrite Done(FollowUpCause cause, int day) => new(
        Some.At(day), FollowUpPlan.Of([Treated.Written()], [], Some.Berlin, Some.Clocks).FollowUps.Single(followUp => followUp.Cause == cause).Id, "Jan", "");
}
