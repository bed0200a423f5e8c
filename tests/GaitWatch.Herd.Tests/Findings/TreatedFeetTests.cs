using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class TreatedFeetTests
{
    private static readonly Finding Treated = Some.Finding("a", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed, FindingAction.LooseHornRemoved, FindingAction.Block, FindingAction.Wrap);

    [Fact]
    public void A_treated_foot_is_followed_with_its_marks_from_the_alerts_onset()
    {
        var foot = Assert.Single(TreatedFeet.Of(
            [
                Treated, Some.Finding("b", 3, Lesion.None, Leg.Rh, FindingAction.WrapOff), Some.Finding("c", 26, Lesion.None, Leg.Rh, FindingAction.BlockOff),
                Some.Finding("d", 3, Lesion.None, Leg.Lh, FindingAction.Trimmed),
            ],
            [Some.Alert(raised: -2), Some.Alert(leg: Leg.Lh, raised: -1)]));
        Assert.Equal(("a", Leg.Rh, Some.At(0), Some.At(-5, 6)), (foot.FindingId, foot.Foot, foot.TreatedAt, foot.OnsetAt));
        Assert.Equal(
            [(0, RecoveryMarkKind.Wrap), (0, RecoveryMarkKind.Block), (3, RecoveryMarkKind.WrapOff), (26, RecoveryMarkKind.BlockOff)],
            foot.Marks.Select(mark => ((int)Math.Round((mark.At - Some.At(0)).TotalDays), mark.What)));
        Assert.Null(foot.TreatedAgainAt);
    }

    [Fact]
    public void Without_an_alert_she_began_to_spare_it_when_it_was_treated_at_the_latest() =>
        Assert.Equal(Some.At(0), Assert.Single(TreatedFeet.Of([Treated], [])).OnsetAt);

    [Fact]
    public void One_sitting_is_one_treatment_a_new_one_begins_anew_and_a_recheck_goes_on()
    {
        Finding[] findings =
        [
            Treated, Some.Finding("b", 0, Lesion.HeelHornErosion, Leg.Rh, FindingAction.Trimmed) with { At = Some.At(0, 10.2) },
            Some.Finding("recheck", 21, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed), Some.Finding("replaced", 8, Lesion.SoleUlcer, Leg.Rh, FindingAction.BlockLost, FindingAction.Block),
            Some.Finding("opened", 30, Lesion.WhiteLineAbscess, Leg.Rh, FindingAction.LooseHornRemoved), Some.Finding("later", 80, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed),
        ];
        var feet = TreatedFeet.Of(findings, []);
        Assert.Equal(["a", "opened", "later"], feet.Select(foot => foot.FindingId));
        Assert.Equal([Some.At(30), Some.At(80), null], feet.Select(foot => foot.TreatedAgainAt));
    }

    [Fact]
    public void The_trouble_of_a_foot_treated_again_began_before_the_first_treatment()
    {
        var alert = Some.Alert(raised: -2) with { State = AlertState.Closed, ClosedAt = Some.At(0), CloseReason = AlertCloseReason.TreatedByFarm };
        var feet = TreatedFeet.Of([Treated, Some.Finding("b", 30, Lesion.SoleUlcer, Leg.Rh, FindingAction.LooseHornRemoved)], [alert]);
        Assert.All(feet, foot => Assert.Equal(Some.At(-5, 6), foot.OnsetAt));
    }

    [Fact]
    public void Nothing_found_and_nothing_done_start_no_follow_up() =>
        Assert.Empty(TreatedFeet.Of([Some.Finding("a", 0, Lesion.None, Leg.Rh, FindingAction.Trimmed), Some.Finding("b", 1, Lesion.SoleUlcer)], []));
}
