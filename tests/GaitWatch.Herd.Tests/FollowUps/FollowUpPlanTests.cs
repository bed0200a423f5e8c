using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

/// <summary>
/// The clocks that work on a foot starts. Block check at 5-11 days, block off at 25-31, judged at 35: Thomas H.J. et al. 2015, J
/// Dairy Sci 98:4477-4486. Wrap off at 3 days, overdue at 5; soft horn after 21 days; unsafe block within 3: common practice, no source.
/// </summary>
public sealed class FollowUpPlanTests
{
    private static readonly Finding Treated = Some.Finding(
        "a", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.LooseHornRemoved, FindingAction.Block, FindingAction.Wrap) with { Claw = Claw.Outer, BlockClaw = Claw.Inner };

    [Fact]
    public void A_treated_foot_starts_its_clocks() => Assert.Equal(
        [
            (FollowUpTask.WrapOff, FollowUpCause.Wrap, 3, 5), (FollowUpTask.BlockCheck, FollowUpCause.Block, 5, 11),
            (FollowUpTask.Recheck, FollowUpCause.SoftHorn, 21, 28), (FollowUpTask.BlockOff, FollowUpCause.BlockWorn, 25, 31),
            (FollowUpTask.Recheck, FollowUpCause.Outcome, 35, 42),
        ],
        Plan(Treated.Written()).FollowUps.Select(f => (f.What, f.Cause, f.DueOn.DayNumber - Some.Day0.DayNumber, f.OverdueOn.DayNumber - Some.Day0.DayNumber)));

    [Fact]
    public void A_trim_that_found_nothing_starts_none() =>
        Assert.Empty(Plan(Some.Finding("a", lesion: Lesion.None, actions: FindingAction.Trimmed).Written()).FollowUps);

    [Fact]
    public void Days_are_the_farms_also_where_the_clocks_change()
    {
        // 2026-03-28 23:30 in Berlin is 22:30 UTC; the night has 23 hours (IANA tz database, EU rule).
        var late = Treated with { At = new DateTimeOffset(2026, 3, 28, 22, 30, 0, TimeSpan.Zero) };
        Assert.Equal(new DateOnly(2026, 3, 31), Find(FollowUpCause.Wrap, late.Written()).DueOn);
        // 2026-10-25 00:30 in Berlin is 22:30 UTC of the day before; the day has 25 hours.
        var early = Treated with { At = new DateTimeOffset(2026, 10, 24, 22, 30, 0, TimeSpan.Zero) };
        Assert.Equal(new DateOnly(2026, 10, 28), Find(FollowUpCause.Wrap, early.Written()).DueOn);
    }

    [Theory]
    [InlineData(10, 10, 17)]
    [InlineData(21, 21, 28)]
    [InlineData(30, 21, 28)]
    [InlineData(0, 21, 28)]
    public void Soft_horn_is_looked_at_after_21_days_or_at_the_next_visit(int visit, int due, int overdue)
    {
        var followUp = Find(FollowUpCause.SoftHorn, Treated.Written(), Visit(visit));
        Assert.Equal((Some.Day0.AddDays(due), Some.Day0.AddDays(overdue)), (followUp.DueOn, followUp.OverdueOn));
    }

    [Fact]
    public void An_unsafe_block_is_looked_at_within_three_days()
    {
        var followUp = Find(FollowUpCause.UnsafeBlock, (Treated with { BlockClaw = Claw.Outer }).Written());
        Assert.Equal((FollowUpTask.BlockCheck, Some.Day0.AddDays(1), Some.Day0.AddDays(3)), (followUp.What, followUp.DueOn, followUp.OverdueOn));
        Assert.DoesNotContain(Plan(Treated.Written()).FollowUps, f => f.Cause == FollowUpCause.UnsafeBlock);
    }

    [Theory]
    // wrap
    [InlineData(FollowUpCause.Wrap, 2, FindingAction.WrapOff, true)]
    [InlineData(FollowUpCause.Wrap, 2, FindingAction.Wrap, true)]
    [InlineData(FollowUpCause.Wrap, 9, FindingAction.Trimmed, false)]
    // block looked at: in its time, or the block is no longer there
    [InlineData(FollowUpCause.Block, 6, FindingAction.Trimmed, true)]
    [InlineData(FollowUpCause.Block, 3, FindingAction.WrapOff, false)]
    [InlineData(FollowUpCause.Block, 3, FindingAction.BlockLost, true)]
    [InlineData(FollowUpCause.Block, 3, FindingAction.BlockOff, true)]
    // block off
    [InlineData(FollowUpCause.BlockWorn, 26, FindingAction.BlockOff, true)]
    [InlineData(FollowUpCause.BlockWorn, 9, FindingAction.BlockLost, true)]
    [InlineData(FollowUpCause.BlockWorn, 9, FindingAction.Block, true)]
    [InlineData(FollowUpCause.BlockWorn, 26, FindingAction.Trimmed, false)]
    // looked at again
    [InlineData(FollowUpCause.SoftHorn, 21, FindingAction.Trimmed, true)]
    [InlineData(FollowUpCause.SoftHorn, 20, FindingAction.Trimmed, false)]
    [InlineData(FollowUpCause.SoftHorn, 20, FindingAction.LooseHornRemoved, true)]
    [InlineData(FollowUpCause.Outcome, 35, FindingAction.Trimmed, true)]
    public void A_later_finding_of_the_foot_does_what_was_due(FollowUpCause cause, int day, FindingAction action, bool done)
    {
        var later = Some.Finding("b", day, Lesion.None, Leg.Rh, action);
        var followUp = Find(cause, Treated.Written(), later.Written());
        Assert.Equal(done ? later.At : null, followUp.DoneAt);
        Assert.Equal(done ? "b" : null, followUp.DoneByFinding);
    }

    [Fact]
    public void Another_foot_another_cow_and_the_same_sitting_do_nothing()
    {
        FarmWrite[] writes =
        [
            Treated.Written(), Some.Finding("b", 6, Lesion.None, Leg.Lh, FindingAction.BlockOff).Written(),
            (Some.Finding("c", 6, Lesion.None, Leg.Rh, FindingAction.BlockOff) with { Cow = "87" }).Written(),
            (Some.Finding("d", 0, Lesion.HeelHornErosion, Leg.Rh, FindingAction.Block) with { At = Treated.At.AddMinutes(5), BlockClaw = Claw.Inner }).Written(),
        ];
        Assert.All(Plan(writes).FollowUps.Where(f => f.FindingId == "a"), followUp => Assert.Null(followUp.DoneAt));
    }

    [Fact]
    public void The_farm_says_it_is_done_and_the_earliest_word_counts()
    {
        var id = Find(FollowUpCause.Wrap, Treated.Written()).Id;
        var followUp = Find(
            FollowUpCause.Wrap, Treated.Written(), new FollowUpDoneWrite(Some.At(4), id, "K.", ""), new FollowUpDoneWrite(Some.At(3), id, "L.", ""),
            Some.Finding("b", 5, Lesion.None, Leg.Rh, FindingAction.WrapOff).Written());
        Assert.Equal((Some.At(3), null), (followUp.DoneAt, followUp.DoneByFinding));
    }

    [Fact]
    public void A_foot_shown_to_have_recovered_is_judged()
    {
        var recovered = Some.Recovery("a", RecoveryStatus.Recovered) with { RecoveredOn = Some.Day0.AddDays(30) };
        var plan = FollowUpPlan.Of([Treated.Written()], [], Some.Berlin, Some.Clocks, [recovered]);
        Assert.Equal(Some.Berlin.EndOf(Some.Day0.AddDays(30)), plan.FollowUps.Single(f => f.Cause == FollowUpCause.Outcome).DoneAt);
        Assert.Null(plan.FollowUps.Single(f => f.Cause == FollowUpCause.BlockWorn).DoneAt);
    }

    [Fact]
    public void Ids_are_the_same_in_every_fold_and_survive_a_correction()
    {
        var before = Plan(Treated.Written()).FollowUps.Select(f => f.Id).ToArray();
        var after = Plan(Treated.Written(), new FindingCorrectionWrite(Treated with { At = Some.At(1), Note = "n" }, Some.At(2))).FollowUps;
        Assert.Equal(before, after.Select(f => f.Id));
        Assert.Equal(Some.Day0.AddDays(4), after[0].DueOn);
        Assert.Equal(before.Length, before.Distinct().Count());
        Assert.All(before, id => Assert.Matches("^[0-9a-f]{20}$", id));
    }

    [Theory]
    [InlineData(Urgency.Today, null, true)]
    [InlineData(Urgency.NextVisit, 3, false)]
    [InlineData(Urgency.NextVisit, null, true)]
    [InlineData(Urgency.Watch, null, false)]
    public void A_flag_for_today_closed_by_eye_asks_for_a_second_look(Urgency urgency, int? visit, bool asks)
    {
        var alert = Closed(AlertCloseReason.SeenWalkingSound) with { Urgency = urgency };
        FarmWrite[] writes = visit is { } day ? [Visit(day)] : [];
        var plan = FollowUpPlan.Of(writes, [alert], Some.Berlin, Some.Clocks).FollowUps;
        Assert.Equal(asks ? [(FollowUpTask.Recheck, Some.Day0.AddDays(4), (string?)null)] : [], plan.Select(f => (f.What, f.DueOn, f.FindingId)));
    }

    [Fact]
    public void A_second_look_is_done_by_lifting_the_foot_and_is_not_asked_for_after_lifting()
    {
        Assert.Empty(FollowUpPlan.Of([], [Closed(AlertCloseReason.LiftedNothingFound)], Some.Berlin, Some.Clocks).FollowUps);
        var plan = FollowUpPlan.Of([Some.Finding("b", 3, Lesion.None).Written()], [Closed(AlertCloseReason.SeenWalkingSound)], Some.Berlin, Some.Clocks);
        Assert.Equal("b", Assert.Single(plan.FollowUps).DoneByFinding);
    }

    [Fact]
    public void What_is_over_before_the_next_visit_is_the_farms_own()
    {
        var farm = Plan(Treated.Written(), Visit(8));
        Assert.Equal([FollowUpCause.Wrap], farm.FarmTasks(Some.Day0.AddDays(6), HerdRegister.Empty).Select(f => f.Cause));
        Assert.Empty(farm.FarmTasks(Some.Day0.AddDays(8), HerdRegister.Empty));
        Assert.Equal(
            [FollowUpCause.Wrap, FollowUpCause.Block, FollowUpCause.SoftHorn],
            farm.Due(Some.Day0.AddDays(8), HerdRegister.Empty).Select(f => f.Cause));
        var none = Plan(Treated.Written());
        Assert.Equal([FollowUpCause.Wrap, FollowUpCause.Block], none.FarmTasks(Some.Day0.AddDays(6), HerdRegister.Empty).Select(f => f.Cause));
        Assert.Empty(none.FarmTasks(Some.Day0.AddDays(2), HerdRegister.Empty));
    }

    [Fact]
    public void A_cow_that_has_left_needs_nothing()
    {
        var register = new HerdRegister([new CowRegistration("417", Some.At(-9)) { LeftOn = Some.Day0.AddDays(4) }]);
        Assert.NotEmpty(Plan(Treated.Written()).Due(Some.Day0.AddDays(3), register));
        Assert.Empty(Plan(Treated.Written()).Due(Some.Day0.AddDays(4), register));
    }

    [Fact]
    public void The_plan_as_it_stood_knows_nothing_later()
    {
        FarmWrite[] writes = [Treated.Written(), Some.Finding("b", 3, Lesion.None, Leg.Rh, FindingAction.WrapOff).Written(), Some.Finding("c", 9, actions: FindingAction.Wrap).Written()];
        var then = FollowUpPlan.Of(writes, [], Some.Berlin, Some.Clocks, asOf: Some.At(2));
        Assert.Null(then.FollowUps.Single(f => f.Cause == FollowUpCause.Wrap).DoneAt);
    }

    [Fact]
    public void After_a_year_nothing_of_a_finding_is_asked_any_more()
    {
        FarmWrite[] writes = [Some.Finding("old", 0, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed, FindingAction.Block).Written()];
        int Asked(int day) => FollowUpPlan.Of(writes, [], Some.Berlin, Some.Clocks, on: Some.Day0.AddDays(day)).Due(Some.Day0.AddDays(day), HerdRegister.Empty).Length;
        Assert.Equal(3, Asked(365));
        Assert.Equal(0, Asked(366));
    }

    [Fact]
    public void Order_copies_and_lateness_change_nothing()
    {
        var id = Find(FollowUpCause.Block, Treated.Written()).Id;
        FarmWrite[] writes =
        [
            Treated.Written(), new FindingCorrectionWrite(Treated with { BlockClaw = Claw.Outer }, Some.At(1)), Visit(8), Visit(30),
            Some.Finding("b", 8, Lesion.None, Leg.Rh, FindingAction.WrapOff).Written(), Some.Finding("c", 26, actions: FindingAction.BlockOff).Written(),
            new FollowUpDoneWrite(Some.At(7), id, "", ""), Some.Finding("d", 8, Lesion.WhiteLineAbscess, Leg.Lh, FindingAction.CoriumExposed, FindingAction.Wrap).Written(),
        ];
        Alert[] alerts = [Closed(AlertCloseReason.SeenWalkingSound)];
        var expected = string.Join(';', FollowUpPlan.Of(writes, alerts, Some.Berlin, Some.Clocks).FollowUps);
        Gen.Shuffle(writes.Concat(writes).ToArray()).Sample(shuffled =>
            string.Join(';', FollowUpPlan.Of(shuffled, alerts.Concat(alerts), Some.Berlin, Some.Clocks).FollowUps) == expected);
    }

    private static Alert Closed(AlertCloseReason reason) =>
        Some.Alert() with { State = AlertState.Closed, ClosedAt = Some.At(1), CloseReason = reason };

    private static VisitWrite Visit(int day) => new(Some.At(0), new Visit(Some.Day0.AddDays(day)));

    private static FollowUpPlan Plan(params FarmWrite[] writes) => FollowUpPlan.Of(writes, [], Some.Berlin, Some.Clocks);

    private static FollowUp Find(FollowUpCause cause, params FarmWrite[] writes) =>
        Plan(writes).FollowUps.Single(followUp => followUp.Cause == cause && followUp.FindingId == "a");
}
