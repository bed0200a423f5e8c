using System.Text.Json;
using CsCheck;

namespace GaitWatch.Herd.Tests;

public sealed class FindingLogTests
{
    [Fact]
    public void Sent_twice_it_counts_once()
    {
        var finding = Some.Finding("a");
        var log = FindingLog.Of([finding.Written(), finding.Written(hoursLater: 5)]);
        Assert.Equal([finding], log.Findings.ToArray());
        Assert.Single(log.Find("a")!.Versions);
        Assert.Equal(FindingVerdict.Known, log.Judge(finding));
    }

    [Fact]
    public void Another_body_under_a_known_id_is_a_conflict_and_is_kept_aside()
    {
        var first = Some.Finding("a");
        var other = first with { Severity = 3 };
        Assert.Equal(FindingVerdict.Conflict, FindingLog.Of([first.Written()]).Judge(other));
        Assert.Equal(FindingVerdict.New, FindingLog.Empty.Judge(first));
        var log = FindingLog.Of([other.Written(hoursLater: 1), first.Written()]);
        Assert.Equal([first], log.Findings.ToArray());
        Assert.Equal(other, Assert.Single(log.Find("a")!.Conflicts).Finding);
    }

    [Fact]
    public void A_correction_holds_and_the_earlier_wording_is_kept()
    {
        var first = Some.Finding("a");
        var second = first with { Severity = 3 };
        var third = first with { Severity = 2 };
        var log = FindingLog.Of(
        [
            new FindingCorrectionWrite(third, first.At.AddHours(3)), first.Written(), new FindingCorrectionWrite(second, first.At.AddHours(2)),
            new FindingCorrectionWrite(third, first.At.AddHours(4)),
        ]);
        Assert.Equal([third], log.Findings.ToArray());
        Assert.Equal([first, second, third], log.Find("a")!.Versions.Select(version => version.Finding));
        Assert.Equal(FindingVerdict.Known, log.Judge(first));
    }

    [Fact]
    public void A_correction_may_come_before_what_it_corrects()
    {
        var first = Some.Finding("a");
        var right = first with { Foot = GaitWatch.Gait.Leg.Lh };
        Assert.Equal([right], FindingLog.Of([new FindingCorrectionWrite(right, first.At.AddHours(3))]).Findings.ToArray());
    }

    [Fact]
    public void A_finding_taken_back_counts_no_more_and_its_wordings_are_kept()
    {
        var first = Some.Finding("a");
        var back = new FindingWithdrawalWrite(first, first.At.AddMinutes(3));
        var log = FindingLog.Of([back, Some.Finding("b").Written(), first.Written(), back]);
        Assert.Equal(["b"], log.Findings.Select(finding => finding.Id));
        Assert.Equal(first.At.AddMinutes(3), log.Find("a")!.WithdrawnAt);
        Assert.Equal(2, log.Find("a")!.Versions.Length);
        // A phone that did not hear the answer sends it again: that does not bring it back.
        Assert.Equal(FindingVerdict.Known, log.Judge(first));
        Assert.Equal(["b"], FindingLog.Of([back, Some.Finding("b").Written(), first.Written(hoursLater: 5)]).Findings.Select(finding => finding.Id));
    }

    [Fact]
    public void Of_corrections_and_withdrawals_the_latest_holds()
    {
        var first = Some.Finding("a");
        var right = first with { Severity = 1 };
        FarmWrite[] writes = [first.Written(), new FindingWithdrawalWrite(first, first.At.AddHours(1)), new FindingCorrectionWrite(right, first.At.AddHours(2))];
        Assert.Equal([right], FindingLog.Of(writes).Findings.ToArray());
        Assert.Null(FindingLog.Of(writes).Find("a")!.WithdrawnAt);
        Assert.Empty(FindingLog.Of([.. writes, new FindingWithdrawalWrite(right, first.At.AddHours(3))]).Findings);
        // Taken back before what it takes back has come.
        Assert.Empty(FindingLog.Of([writes[1]]).Findings);
    }

    [Fact]
    public void Order_copies_and_lateness_change_nothing()
    {
        var writes = Enumerable.Range(0, 4).SelectMany(i =>
        {
            var finding = Some.Finding($"f{i % 3}", day: i, actions: FindingAction.Trimmed);
            return new FarmWrite[]
            {
                finding.Written(), new FindingCorrectionWrite(finding with { Severity = 1 + i % 3 }, Some.At(5)),
                new FindingCorrectionWrite(finding with { Note = "n" }, Some.At(5 + i % 2)),
                new FindingWithdrawalWrite(finding, Some.At(5 + i % 2)),
            };
        }).ToArray();
        var expected = Describe(FindingLog.Of(writes));
        Gen.Shuffle(writes.Concat(writes).ToArray()).Sample(shuffled => Describe(FindingLog.Of(shuffled)) == expected);
    }

    [Fact]
    public void The_order_of_actions_and_signs_makes_no_other_finding()
    {
        var finding = Some.Finding("a") with { Actions = [FindingAction.Block, FindingAction.Trimmed], Signs = [VetSign.DeepInfection, VetSign.NoWeightOnLeg] };
        var same = finding with { Actions = [FindingAction.Trimmed, FindingAction.Block, FindingAction.Block], Signs = [VetSign.NoWeightOnLeg, VetSign.DeepInfection] };
        Assert.Equal(finding, same);
        Assert.Equal(finding.GetHashCode(), same.GetHashCode());
        Assert.NotEqual(finding, finding with { Note = "x" });
        // Texts that run into each other stay apart.
        Assert.NotEqual(finding with { By = "a", Note = "b,1:c" }, finding with { By = "a,1:b", Note = "c" });
    }

    [Fact]
    public void Every_write_survives_being_kept_as_text()
    {
        var finding = Some.Finding("a", actions: [FindingAction.Trimmed, FindingAction.Block]) with
        {
            Claw = Claw.Outer, BlockClaw = Claw.Inner, BlockMaterial = "rubber", ForeignBody = new ForeignBody("stone", 6), WithdrawalUntil = Some.Day0, Zone = 4,
            Signs = [VetSign.DeepInfection], Severity = 3, LocomotionScore = 4, By = "K.", Note = "ä",
        };
        FarmWrite[] writes =
        [
            finding.Written(1), new FindingCorrectionWrite(finding, Some.At(1)), new FindingWithdrawalWrite(finding, Some.At(1)), new VisitWrite(Some.At(0), new Visit(Some.Day0) { Half = VisitHalf.Pm, Places = 12 }),
            new VisitMoveWrite(Some.At(0), Some.Day0, new Visit(Some.Day0.AddDays(1))), new VisitCancelWrite(Some.At(0), Some.Day0),
            new FollowUpDoneWrite(Some.At(0), "x", "K.", ""), new TrimListHandWrite(Some.At(0), Some.Day0, "417", TrimListHand.Pinned, "limps") { Foot = GaitWatch.Gait.Leg.Lf },
        ];
        foreach (var write in writes)
        {
            Assert.Equal(write, JsonSerializer.Deserialize<FarmWrite>(JsonSerializer.Serialize(write, Some.Json), Some.Json));
        }
    }

    private static string Describe(FindingLog log) => string.Join(';', Enumerable.Range(0, 3).Select(i => $"f{i}").Select(id =>
        $"{log.Find(id)!.WithdrawnAt}:" + string.Join('>', log.Find(id)!.Versions.Concat(log.Find(id)!.Conflicts).Select(v => $"{v.Finding.Id}{v.Finding.At}{v.Finding.Severity}{v.Finding.Note}{v.EnteredAt}{v.IsWithdrawal}"))));
}
