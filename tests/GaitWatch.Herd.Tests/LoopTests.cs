using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

/// <summary>One cow's way from a flag to a healed foot and back, as the farm lives it.</summary>
public sealed class LoopTests
{
    private static readonly HerdRegister Herd = new([new CowRegistration("417", Some.At(-400)) { Pen = "2", Parity = 3, CalvedOn = Some.Day0.AddDays(-150) }]);

    private readonly List<FarmWrite> _writes = [new VisitWrite(Some.At(-9), new Visit(Some.Day0)), new VisitWrite(Some.At(-9), new Visit(Some.Day0.AddDays(28)))];

    private Alert _alert = Some.Alert(raised: -2);

    private RecoveryAssessment[] _recoveries = [];

    [Fact]
    public void From_a_flag_to_a_healed_foot_and_what_is_due_on_the_way()
    {
        // The evening before the visit she is on the list.
        Assert.Equal(["417 alert rh"], List(visit: 0, asOf: -1));

        // At the chute: an ulcer outside, the block inside. The flag was right, and nothing is unsafe.
        var ulcer = Some.Finding("f1", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed, FindingAction.LooseHornRemoved, FindingAction.Block, FindingAction.Wrap) with
        {
            Claw = Claw.Outer, Zone = 4, Severity = 2, BlockClaw = Claw.Inner,
        };
        _writes.Add(ulcer.Written());
        _writes.Add(Some.Finding("f2", 0, Lesion.None, Leg.Lh, FindingAction.Trimmed).Written());
        _alert = _alert with { State = AlertState.Examined };
        Assert.Empty(FindingWarnings.Of(ulcer, FindingLog.Of(_writes).OfCow("417")));
        Assert.Equal(LabelKind.Right, Assert.Single(AlertLabels.Of([_alert], FindingLog.Of(_writes).Findings, Some.Berlin)).Kind);

        // The next visit is four weeks away: wrap and block check are the farm's.
        Assert.Empty(FarmTasks(2));
        Assert.Equal(["wrap-off 2026-03-06"], FarmTasks(3));
        _writes.Add(new FollowUpDoneWrite(Some.At(3), Plan().FollowUps.Single(f => f.What == FollowUpTask.WrapOff).Id, "K.", ""));
        Assert.Empty(FarmTasks(4));
        Assert.Equal(["block-check 2026-03-08"], FarmTasks(5));
        _writes.Add((Some.Finding("f3", 7, Lesion.None, Leg.Rh) with { Note = "block holds" }).Written());
        Assert.Empty(FarmTasks(8));

        // The soft horn is due at 21 days and overdue at 28, the day of the visit: the trimmer's, with the block.
        Assert.Empty(FarmTasks(26));
        Assert.Equal(["417 recheck rh"], List(visit: 28, asOf: 27));
        _writes.Add(Some.Finding("f4", 28, Lesion.None, Leg.Rh, FindingAction.Trimmed, FindingAction.BlockOff).Written());

        // One follow-up is left: did it help? Her load answers.
        Assert.Equal([FollowUpCause.Outcome], Plan().FollowUps.Where(f => f.DoneAt is null).Select(f => f.Cause));
        _recoveries = [Some.Recovery("f1", RecoveryStatus.Recovered) with { RecoveredOn = Some.Day0.AddDays(38), BandPercent = 3 }];
        Assert.DoesNotContain(Plan().FollowUps, f => f.DoneAt is null);
    }

    [Fact]
    public void A_foot_that_does_not_heal_comes_back_on_the_list_by_itself()
    {
        _writes.Add(Some.Finding("f1", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed).Written());
        _alert = _alert with { State = AlertState.Examined };
        Assert.Empty(List(visit: 28, asOf: 27));
        _recoveries = [Some.Recovery("f1", RecoveryStatus.Stalled)];
        Assert.Equal(["417 not-recovering rh"], List(visit: 28, asOf: 27));
    }

    private FollowUpPlan Plan() => FollowUpPlan.Of(_writes, [_alert], Some.Berlin, Some.Clocks, _recoveries);

    private IEnumerable<string> FarmTasks(int day) =>
        Plan().FarmTasks(Some.Day0.AddDays(day), Herd).Select(task => $"{task.What.WireName()} {task.DueOn:yyyy-MM-dd}");

    private IEnumerable<string> List(int visit, int asOf) => TrimListComposer.Compose(new TrimListInputs
    {
        AsOf = Some.At(asOf, 20),
        Visit = Some.Day0.AddDays(visit),
        Calendar = Some.Berlin,
        Register = Herd,
        Writes = [.. _writes],
        Alerts = [_alert],
        Recoveries = [.. _recoveries],
    }).Rows.Select(row => $"{row.Cow} {row.Reason.WireName()} {row.Leg?.WireName()}");
}
