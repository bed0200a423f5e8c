using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class AlertLabelsTests
{
    public static TheoryData<Lesion, int?, MStage?, LabelKind> OnTheNamedLeg { get; } = new()
    {
        { Lesion.ForeignBody, null, null, LabelKind.Right }, { Lesion.SoleUlcer, 1, null, LabelKind.Right }, { Lesion.BulbUlcer, null, null, LabelKind.Right },
        { Lesion.ToeUlcer, null, null, LabelKind.Right }, { Lesion.ToeNecrosis, null, null, LabelKind.Right }, { Lesion.WhiteLineAbscess, 2, null, LabelKind.Right },
        { Lesion.ThinSole, null, null, LabelKind.Right }, { Lesion.InterdigitalPhlegmon, null, null, LabelKind.Right }, { Lesion.CoronetOrBulbSwelling, null, null, LabelKind.Right },
        { Lesion.DigitalDermatitis, null, MStage.M1, LabelKind.Right }, { Lesion.DigitalDermatitis, null, MStage.M2, LabelKind.Right },
        { Lesion.DigitalDermatitis, null, MStage.M41, LabelKind.Right }, { Lesion.DigitalDermatitis, null, MStage.M3, LabelKind.Minor },
        { Lesion.DigitalDermatitis, null, MStage.M4, LabelKind.Minor }, { Lesion.DigitalDermatitis, null, null, LabelKind.Minor },
        { Lesion.WhiteLineFissure, 3, null, LabelKind.Right }, { Lesion.WhiteLineFissure, 2, null, LabelKind.Minor },
        { Lesion.DiffuseSoleHaemorrhage, 3, null, LabelKind.Right }, { Lesion.CircumscribedSoleHaemorrhage, null, null, LabelKind.Minor },
        { Lesion.HeelHornErosion, 3, null, LabelKind.Minor }, { Lesion.Other, 3, null, LabelKind.Minor }, { Lesion.None, null, null, LabelKind.NothingFound },
    };

    [Theory]
    [MemberData(nameof(OnTheNamedLeg))]
    public void A_finding_on_the_named_leg_labels_the_alert(Lesion lesion, int? severity, MStage? stage, LabelKind kind) =>
        Assert.Equal(kind, Label(Some.Finding("f", 2, lesion) with { Severity = severity, MStage = stage })!.Kind);

    [Theory]
    [InlineData(VetSign.SwellingAboveClaw)]
    [InlineData(VetSign.LameNothingInFoot)]
    public void Trouble_above_the_foot_is_right(VetSign sign) =>
        Assert.Equal(LabelKind.Right, Label(Some.Finding("f", 2, Lesion.None) with { Signs = [sign] })!.Kind);

    [Fact]
    public void A_stone_beside_a_minor_lesion_is_right() =>
        Assert.Equal(LabelKind.Right, Label(Some.Finding("f", 2, Lesion.WhiteLineFissure) with { ForeignBody = new ForeignBody("stone", 4) })!.Kind);

    [Fact]
    public void What_makes_lame_on_another_leg_is_other_leg_whether_the_named_foot_was_lifted_or_not()
    {
        var other = Some.Finding("o", 2, Lesion.SoleUlcer, Leg.Lh);
        Assert.Equal(LabelKind.OtherLeg, Label(other)!.Kind);
        Assert.Equal(LabelKind.OtherLeg, Label(other, Some.Finding("n", 2, Lesion.None))!.Kind);
        Assert.Equal(LabelKind.OtherLeg, Label(other, Some.Finding("n", 2, Lesion.HeelHornErosion))!.Kind);
        Assert.Equal(LabelKind.Right, Label(other, Some.Finding("n", 2, Lesion.SoleUlcer))!.Kind);
    }

    [Fact]
    public void A_minor_lesion_elsewhere_says_nothing_of_a_foot_that_was_not_lifted()
    {
        Assert.Null(Label(Some.Finding("o", 2, Lesion.HeelHornErosion, Leg.Lf)));
        Assert.Equal(LabelKind.NothingFound, Label(Some.Finding("o", 2, Lesion.HeelHornErosion, Leg.Lf), Some.Finding("n", 2, Lesion.None))!.Kind);
    }

    [Fact]
    public void An_alert_on_both_hind_legs_names_both()
    {
        var both = Some.Alert() with { Pattern = AlertPattern.BothHind };
        Assert.Equal(LabelKind.Right, Assert.Single(AlertLabels.Of([both], [Some.Finding("f", 2, Lesion.SoleUlcer, Leg.Lh)], Some.Berlin)).Kind);
        Assert.Equal(LabelKind.OtherLeg, Assert.Single(AlertLabels.Of([both], [Some.Finding("f", 2, Lesion.SoleUlcer, Leg.Lf)], Some.Berlin)).Kind);
    }

    [Fact]
    public void What_is_found_at_a_second_look_within_a_week_still_counts_and_not_later()
    {
        Assert.Equal(LabelKind.Right, Label(Some.Finding("a", 2, Lesion.None), Some.Finding("b", 8, Lesion.WhiteLineAbscess))!.Kind);
        Assert.Equal(LabelKind.NothingFound, Label(Some.Finding("a", 2, Lesion.None), Some.Finding("b", 10, Lesion.WhiteLineAbscess))!.Kind);
    }

    [Theory]
    [InlineData(AlertCloseReason.LiftedNothingFound, LabelKind.NothingFound)]
    [InlineData(AlertCloseReason.SeenWalkingSound, null)]
    [InlineData(AlertCloseReason.TreatedByFarm, null)]
    [InlineData(AlertCloseReason.WrongCow, null)]
    [InlineData(AlertCloseReason.LoadNormal, null)]
    public void Only_lifting_says_that_nothing_was_found(AlertCloseReason reason, LabelKind? kind)
    {
        var alert = Some.Alert() with { State = AlertState.Closed, ClosedAt = Some.At(3), CloseReason = reason };
        Assert.Equal(kind, AlertLabels.Of([alert], [], Some.Berlin).SingleOrDefault()?.Kind);
    }

    [Fact]
    public void Findings_before_the_alert_or_after_the_day_it_was_closed_belong_to_another()
    {
        var closed = Some.Alert() with { State = AlertState.Closed, ClosedAt = Some.At(3, 11), CloseReason = AlertCloseReason.LoadNormal };
        Assert.Empty(AlertLabels.Of([closed], [Some.Finding("a", -1), Some.Finding("b", 4)], Some.Berlin));
        Assert.Single(AlertLabels.Of([closed], [Some.Finding("c", 3) with { At = Some.At(3, 23) }], Some.Berlin));
    }

    [Fact]
    public void The_label_names_its_findings_and_when_the_foot_was_lifted()
    {
        var label = Label(Some.Finding("a", 2), Some.Finding("b", 2, Lesion.None) with { At = Some.At(2, 10.1) })!;
        Assert.Equal("a", Assert.Single(label.FindingIds));
        Assert.Equal(Some.At(2), label.LiftedAt);
    }

    [Fact]
    public void The_order_of_findings_and_alerts_changes_nothing()
    {
        Finding[] findings = [Some.Finding("a", 2, Lesion.None), Some.Finding("b", 4), Some.Finding("c", 3, Lesion.SoleUlcer, Leg.Lf), Some.Finding("d", 20, Lesion.HeelHornErosion)];
        Alert[] alerts = [Some.Alert(), Some.Alert(leg: Leg.Lf), Some.Alert("87"), Some.Alert(raised: 12)];
        string Describe(IEnumerable<Alert> a, IEnumerable<Finding> f) =>
            string.Join(';', AlertLabels.Of(a, f, Some.Berlin).Select(label => $"{label.Alert.Id} {label.Kind} {label.LiftedAt} {string.Join(',', label.FindingIds)}"));
        var expected = Describe(alerts, findings);
        Gen.Select(Gen.Shuffle(alerts.Concat(alerts).ToArray()), Gen.Shuffle(findings)).Sample((a, f) => Describe(a, f) == expected);
    }

    [Fact]
    public void The_hit_rate_counts_every_kind_by_month_and_by_urgency()
    {
        Alert[] alerts = [Some.Alert("1"), Some.Alert("2", raised: 1), Some.Alert("3", raised: 29, urgency: Urgency.NextVisit), Some.Alert("4", raised: 29), Some.Alert("5")];
        Finding[] findings =
        [
            Some.Finding("1", 2) with { Cow = "1" }, Some.Finding("2", 2, Lesion.None) with { Cow = "2" }, Some.Finding("3", 30, Lesion.HeelHornErosion) with { Cow = "3" },
            Some.Finding("4", 30, Lesion.SoleUlcer, Leg.Lf) with { Cow = "4" },
        ];
        var labels = AlertLabels.Of(alerts, findings, Some.Berlin);
        Assert.Equal(new HitRate(1, 1, 1, 1), HitRate.Of(labels));
        Assert.Equal((1, 4), (HitRate.Of(labels).Hits.Count, HitRate.Of(labels).Hits.Of));
        var report = HitRateReport.Of(alerts, labels, [], new DateOnly(2026, 3, 1), new DateOnly(2026, 5, 1), Some.Berlin);
        Assert.Equal(new FlagTally(5, new HitRate(1, 1, 1, 1)), report.Overall);
        Assert.Equal(
            [(new DateOnly(2026, 3, 1), new FlagTally(3, new HitRate(1, 0, 0, 1))), (new DateOnly(2026, 4, 1), new FlagTally(2, new HitRate(0, 1, 1, 0)))],
            report.ByMonth.AsEnumerable());
        Assert.Equal(
            [
                (Urgency.Today, new FlagTally(4, new HitRate(1, 0, 1, 1))), (Urgency.NextVisit, new FlagTally(1, new HitRate(0, 1, 0, 0))),
                (Urgency.Watch, new FlagTally(0, new HitRate(0, 0, 0, 0))),
            ],
            report.ByUrgency.AsEnumerable());
        Assert.False(report.Overall.IsEnough);
        Assert.Null(HitRate.Of([]).Hits.Value);
    }

    [Fact]
    public void One_that_is_only_watched_was_no_flag_and_counts_apart()
    {
        var watched = Some.Alert("1", urgency: Urgency.Watch);
        var report = HitRateReport.Of([watched], AlertLabels.Of([watched], [Some.Finding("f", 2) with { Cow = "1" }], Some.Berlin), [], Some.Day0, Some.Day0.AddDays(5), Some.Berlin);
        Assert.Equal(0, report.Overall.Raised);
        Assert.Equal(new FlagTally(1, new HitRate(1, 0, 0, 0)), report.ByUrgency.Single(row => row.Urgency == Urgency.Watch).Flags);
    }

    [Fact]
    public void Dismissed_flags_say_why_and_those_that_closed_by_themselves_are_none()
    {
        Alert Closed(string cow, AlertCloseReason reason) => Some.Alert(cow) with { State = AlertState.Closed, ClosedAt = Some.At(4, 6), CloseReason = reason };
        var seen = Closed("1", AlertCloseReason.SeenWalkingSound);
        Alert[] alerts = [seen, Closed("2", AlertCloseReason.LoadNormal), Closed("3", AlertCloseReason.LeftHerd), Some.Alert("4")];
        var write = new CloseAlertWrite(Some.At(4, 6), new AlertClosedByHand("1", Some.At(4, 6), seen.Pattern, seen.Leg, AlertCloseReason.SeenWalkingSound, "walks well", "Jan"));
        var dismissed = Assert.Single(DismissedFlag.Of(alerts, [write]));
        Assert.Equal(new DismissedFlag(seen, AlertCloseReason.SeenWalkingSound, "walks well", "Jan"), dismissed);
    }

    [Fact]
    public void Names_are_fixed() =>
        Assert.Equal(["right", "minor", "other-leg", "nothing-found"], Enum.GetValues<LabelKind>().Select(LabelNames.WireName));

    private static AlertLabel? Label(params Finding[] findings) => AlertLabels.Of([Some.Alert()], findings, Some.Berlin).SingleOrDefault();
}
