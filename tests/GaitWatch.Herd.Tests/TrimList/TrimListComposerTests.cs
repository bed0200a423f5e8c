using System.Collections.Immutable;
using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class TrimListComposerTests
{
    private const int VisitDay = 30;

    private static readonly DateOnly VisitDate = Some.Day0.AddDays(VisitDay);

    [Fact]
    public void Alerts_recoveries_follow_ups_and_routine_trims_make_the_list_in_order()
    {
        var list = Compose(
            alerts: [Some.Alert("1", raised: 29, urgency: Urgency.NextVisit), Some.Alert("2", Leg.Lf, raised: 29), Some.Alert("3", urgency: Urgency.Watch, raised: 29)],
            recoveries: [Some.Recovery("x", RecoveryStatus.Stalled, "4"), Some.Recovery("y", RecoveryStatus.Recovering, "5")],
            writes: [Blocked("6", day: 4), Plan()],
            cows: [Cow("1", "10"), Cow("2", "10"), Cow("3", "2"), Cow("4", "10"), Cow("5", "2"), Cow("6", "2"), Cow("7", "2") with { CalvedOn = VisitDate.AddDays(-80) }]);
        Assert.Equal(
            [
                (1, "2", TrimListReason.Alert, (Leg?)Leg.Lf), (2, "6", TrimListReason.BlockCheck, Leg.Rh), (3, "7", TrimListReason.Routine, null),
                (4, "1", TrimListReason.Alert, Leg.Rh), (5, "4", TrimListReason.NotRecovering, Leg.Rh),
            ],
            list.Rows.Select(row => (row.Position, row.Cow, row.Reason, row.Leg)));
    }

    [Fact]
    public void A_row_says_what_the_trimmer_wants_to_know_before()
    {
        var finding = Some.Finding("a", 10, Lesion.SoleUlcer, Leg.Rh, FindingAction.Trimmed, FindingAction.Block, FindingAction.Antibiotic) with
        {
            Claw = Claw.Outer, Severity = 3, BlockClaw = Claw.Inner, WithdrawalUntil = VisitDate.AddDays(3),
        };
        var row = Assert.Single(Compose(
            alerts: [Some.Alert(raised: 29)],
            writes: [finding.Written(), Plan()],
            cows: [Cow("417", "2") with { Eid = Eid.Parse("999000000000417"), CalvedOn = VisitDate.AddDays(-51), DueOn = VisitDate.AddDays(200) }],
            lastSeen: Some.At(29)).Rows);
        Assert.Equal("999000000000417", row.Eid.ToString());
        Assert.Equal((51, Some.Day0.AddDays(10), VisitDate.AddDays(3)), (row.DaysInMilk, row.BlockOn, row.WithdrawalUntil));
        Assert.Equal(VisitDate.AddDays(200), row.DueOn);
        Assert.Equal(Some.Day0.AddDays(26), row.Since);
        Assert.Equal("2026-03-13: sole ulcer, outer claw, severe: trimmed, block on inner claw, antibiotic", row.LastFinding);
        Assert.Equal(
            "Lift both hind feet. A relapse: the right hind was treated on 2026-03-13. Right hind: Look at the block: is it on, is it level, does she walk better? No better: call the veterinarian.",
            row.Note);
        Assert.Equal(Some.At(29), row.LastSeenAt);
    }

    [Fact]
    public void A_dry_cow_has_no_days_in_milk()
    {
        var row = Assert.Single(Compose(alerts: [Some.Alert(raised: 29)], writes: [Plan()], cows: [Cow("417", "2") with { CalvedOn = VisitDate.AddDays(-300), DriedOffOn = VisitDate.AddDays(-30) }]).Rows);
        Assert.Equal((null, VisitDate.AddDays(-30)), (row.DaysInMilk, row.DryFrom));
    }

    [Fact]
    public void A_flagged_cow_that_stopped_crossing_is_told()
    {
        Assert.StartsWith("Not seen since 2026-03-28.", Compose(alerts: [Some.Alert(raised: 20)], writes: [Plan()], lastSeen: Some.At(25)).Rows[0].Note, StringComparison.Ordinal);
        Assert.DoesNotContain("Not seen", Compose(alerts: [Some.Alert(raised: 20)], writes: [Plan()], lastSeen: Some.At(29)).Rows[0].Note, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_has_no_place_is_kept_and_marked_and_the_pressing_ones_have_one_whatever_their_pen()
    {
        var list = Compose(
            alerts: [Some.Alert("1", raised: 29, urgency: Urgency.NextVisit)],
            writes: [Plan(places: 2), Blocked("2", 4)],
            cows: [Cow("1", "9"), Cow("2", "5"), Cow("3", "1") with { CalvedOn = VisitDate.AddDays(-70) }, Cow("4", "1") with { CalvedOn = VisitDate.AddDays(-70) }]);
        Assert.Equal([("2", true), ("1", true), ("3", false), ("4", false)], list.Rows.Select(row => (row.Cow, row.HasPlace)));
        Assert.Equal([1, 2, 3, 4], list.Rows.Select(row => row.Position));
        Assert.Equal(2, list.WithoutPlace);
    }

    [Fact]
    public void A_cow_put_on_by_hand_has_a_place_and_says_why()
    {
        var list = Compose(
            writes: [Plan(places: 1), Hand("9", TrimListHand.Pinned, "long toes") with { Foot = Leg.Lf }],
            cows: [Cow("3", "1") with { CalvedOn = VisitDate.AddDays(-70) }, Cow("9", "2")]);
        Assert.Equal([("9", true, TrimListReason.Recheck), ("3", false, TrimListReason.Routine)], list.Rows.Select(row => (row.Cow, row.HasPlace, row.Reason)));
        Assert.Equal("Lift both fore feet, then both hind. Asked for by hand: long toes.", list.Rows[0].Note);
    }

    [Fact]
    public void A_cow_taken_off_by_hand_is_kept_aside_with_the_reason()
    {
        var list = Compose(alerts: [Some.Alert("1", raised: 20)], writes: [Plan(), Hand("1", TrimListHand.Removed, "sold on Friday", day: 25)]);
        Assert.Empty(list.Rows);
        Assert.Equal(new TrimListRemoval("1", TrimListReason.Alert, "sold on Friday", ""), Assert.Single(list.Removed));
    }

    [Fact]
    public void Taking_her_off_does_not_silence_an_alert_raised_after()
    {
        var row = Assert.Single(Compose(alerts: [Some.Alert("1", raised: 27)], writes: [Plan(), Hand("1", TrimListHand.Removed, "walks sound", day: 25)]).Rows);
        Assert.Contains("Was taken off the list before this alert.", row.Note, StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_word_holds_and_goes_with_a_moved_visit()
    {
        FarmWrite[] writes =
        [
            new VisitWrite(Some.At(0), new Visit(VisitDate.AddDays(-2))), Hand("1", TrimListHand.Pinned, "a", day: 1, visit: VisitDate.AddDays(-2)),
            Hand("2", TrimListHand.Pinned, "b", day: 1, visit: VisitDate.AddDays(-2)), Hand("2", TrimListHand.AsRule, "", day: 2, visit: VisitDate.AddDays(-2)),
            new VisitMoveWrite(Some.At(3), VisitDate.AddDays(-2), new Visit(VisitDate)),
        ];
        Assert.Equal(["1"], Compose(writes: writes).Rows.Select(row => row.Cow));
    }

    [Fact]
    public void Known_active_digital_dermatitis_goes_last_in_its_pen_unless_she_is_one_for_today()
    {
        var raw = Some.Finding("d", 5, Lesion.DigitalDermatitis, Leg.Lh) with { MStage = MStage.M2 };
        var list = Compose(
            alerts: [Some.Alert("1", raised: 29, urgency: Urgency.NextVisit, drop: 20), Some.Alert("2", raised: 29, urgency: Urgency.NextVisit, drop: 8), Some.Alert("3", raised: 29)],
            writes: [Plan(), (raw with { Id = "d1", Cow = "1" }).Written(), (raw with { Id = "d3", Cow = "3" }).Written()],
            cows: [Cow("1", "2"), Cow("2", "2"), Cow("3", "9"), Cow("4", "3") with { CalvedOn = VisitDate.AddDays(-70) }]);
        Assert.Equal(["3", "2", "1", "4"], list.Rows.Select(row => row.Cow));
        Assert.EndsWith("Active digital dermatitis: disinfect the knives after her.", list.Rows[2].Note, StringComparison.Ordinal);
    }

    [Fact]
    public void An_examined_alert_is_not_listed_again_and_a_foot_treated_anew_is_judged_by_the_new_treatment()
    {
        Assert.Empty(Compose(alerts: [Some.Alert(raised: 20) with { State = AlertState.Examined }], writes: [Plan()]).Rows);
        Assert.Empty(Compose(recoveries: [Some.Recovery("x", RecoveryStatus.Stalled), Some.Recovery("y", RecoveryStatus.Recovering, day: 20)], writes: [Plan()]).Rows);
    }

    [Fact]
    public void A_cow_that_has_left_is_not_listed() =>
        Assert.Empty(Compose(alerts: [Some.Alert(raised: 20)], writes: [Plan()], cows: [Cow("417", "2") with { LeftOn = VisitDate }]).Rows);

    [Fact]
    public void A_second_reason_is_said_in_the_note()
    {
        var row = Assert.Single(Compose(
            alerts: [Some.Alert(raised: 29), Some.Alert(leg: Leg.Lf, raised: 28, drop: 9)], writes: [Plan()], cows: [Cow("417", "2") with { CalvedOn = VisitDate.AddDays(-70) }]).Rows);
        Assert.Equal("Lift both hind feet. Alert on the left fore too. Routine trim: 70 days in milk.", row.Note);
    }

    [Fact]
    public void Order_and_copies_of_what_was_written_change_nothing()
    {
        FarmWrite[] writes =
        [
            Plan(places: 3), Blocked("1", 4), Blocked("2", 20), Hand("3", TrimListHand.Pinned, "x"), Hand("3", TrimListHand.Removed, "y"), Hand("1", TrimListHand.Removed, "z", day: 9),
            Some.Finding("q", 9, Lesion.DigitalDermatitis).Written(), new FindingCorrectionWrite(Some.Finding("q", 9, Lesion.None), Some.At(10)),
        ];
        Alert[] alerts = [Some.Alert("1", raised: 29), Some.Alert("4", raised: 29), Some.Alert("4", Leg.Lh, raised: 29)];
        CowRegistration[] cows = [Cow("1", "2"), Cow("4", "1"), Cow("5", "1") with { CalvedOn = VisitDate.AddDays(-70) }];
        var expected = TrimListText.Render(Compose(alerts, [], writes, cows));
        Gen.Select(Gen.Shuffle(writes.Concat(writes).ToArray()), Gen.Shuffle(alerts)).Sample((shuffled, flags) =>
            TrimListText.Render(Compose(flags, [], shuffled, cows)) == expected);
    }

    [Fact]
    public void A_person_puts_a_cow_elsewhere_and_who_comes_later_goes_where_the_rules_put_her()
    {
        Alert Later(string cow, double drop) => Some.Alert(cow, urgency: Urgency.NextVisit, raised: 29, drop: drop);
        Alert[] alerts = [Later("1", 20), Later("2", 15), Later("3", 10)];
        CowRegistration[] cows = [Cow("1", "2"), Cow("2", "2"), Cow("3", "2"), Cow("4", "2")];
        string[] Order(IEnumerable<Alert> flags, params FarmWrite[] writes) => [.. Compose(flags, [], [Plan(), .. writes], cows).Rows.Select(row => row.Cow)];

        Assert.Equal(["1", "2", "3"], Order(alerts));
        Assert.Equal(["3", "1", "2"], Order(alerts, Move("3", "1")));
        Assert.Equal(["2", "3", "1"], Order(alerts, Move("1", null)));
        Assert.Equal(["4", "3", "1", "2"], Order([.. alerts, Later("4", 25)], Move("3", "1")));
        // A move before somebody who is not on the list, or before herself, changes nothing.
        Assert.Equal(["1", "2", "3"], Order(alerts, Move("3", "9"), Move("2", "2"), Move("9", "1")));
        // Moves are made in the order of time, however they came.
        Assert.Equal(["2", "1", "3"], Order(alerts, Move("3", null, 3), Move("3", "1", 1), Move("2", "1", 2)));
    }

    [Fact]
    public void The_last_word_on_a_tick_holds_and_goes_with_a_visit_that_is_moved()
    {
        Alert[] alerts = [Some.Alert("1", raised: 29), Some.Alert("2", raised: 29)];
        TrimListDoneWrite Tick(string cow, bool isDone, int day) => new(Some.At(day), VisitDate.AddDays(-1), cow, isDone, "Anna");
        var rows = Compose(alerts, [], [
            new VisitWrite(Some.At(0), new Visit(VisitDate.AddDays(-1))), Tick("1", true, 5), Tick("1", false, 6), Tick("2", false, 5), Tick("2", true, 6),
            new VisitMoveWrite(Some.At(7), VisitDate.AddDays(-1), new Visit(VisitDate)),
        ]).Rows;
        Assert.Equal([("1", null), ("2", (DateTimeOffset?)Some.At(6))], rows.Select(row => (row.Cow, row.DoneAt)));
    }

    [Fact]
    public void What_a_person_decides_needs_a_reason_and_a_visit()
    {
        Assert.Equal(
            ["cow is '': a number or name of 1 to 40 characters.", "reason is empty: say why, in a few words; it stands beside her on the list.", "visit is 2026-04-02, where no visit is planned: plan it first."],
            TrimListHandFaults.Of(Hand("", TrimListHand.Removed, " "), VisitBook.Empty).Select(fault => fault.Fault));
        Assert.Equal(
            $"reason is '{new string('x', 40)}…': at most 200 characters on one line.",
            Assert.Single(TrimListHandFaults.Of(Hand("1", TrimListHand.Pinned, new string('x', 201)), VisitBook.Of([Plan()]))).Fault);
        Assert.Empty(TrimListHandFaults.Of(Hand("1", TrimListHand.AsRule, ""), VisitBook.Of([Plan()])));
    }

    private static TrimList Compose(
        IEnumerable<Alert>? alerts = null, IEnumerable<RecoveryAssessment>? recoveries = null, IEnumerable<FarmWrite>? writes = null,
        IEnumerable<CowRegistration>? cows = null, DateTimeOffset? lastSeen = null) => TrimListComposer.Compose(new TrimListInputs
        {
            AsOf = Some.At(VisitDay - 1, 20),
            Visit = VisitDate,
            Calendar = Some.Berlin,
            Register = new HerdRegister(cows ?? []),
            Alerts = [.. alerts ?? []],
            Recoveries = [.. recoveries ?? []],
            Writes = [.. writes ?? []],
            LastSeen = lastSeen is { } seen ? ImmutableDictionary<string, DateTimeOffset>.Empty.Add("417", seen) : ImmutableDictionary<string, DateTimeOffset>.Empty,
        });

    private static TrimListMoveWrite Move(string cow, string? before, int day = 1) => new(Some.At(day), VisitDate, cow, before, "");

    private static CowRegistration Cow(string cow, string pen) => new(cow, Some.At(-400)) { Pen = pen, Parity = 2 };

    private static VisitWrite Plan(int? places = null) => new(Some.At(0), new Visit(VisitDate) { Places = places });

    private static FindingWrite Blocked(string cow, int day) =>
        (Some.Finding("b" + cow, day, Lesion.WhiteLineAbscess, Leg.Rh, FindingAction.Block) with { Cow = cow, Claw = Claw.Outer, BlockClaw = Claw.Inner }).Written();

    private static TrimListHandWrite Hand(string cow, TrimListHand hand, string reason, int day = 1, DateOnly? visit = null) =>
        new(Some.At(day), visit ?? VisitDate, cow, hand, reason);
}
