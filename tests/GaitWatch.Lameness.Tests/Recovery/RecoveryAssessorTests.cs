using CsCheck;

namespace GaitWatch.Lameness.Tests;

/// <summary>What is claimed of a treated foot, and what is not. The cows are invented and seeded.</summary>
public sealed class RecoveryAssessorTests
{
    private static double Healing(double t) => 14 * Math.Exp(-t / 7);

    private static double Still(double t) => 12;

    [Fact]
    public void A_foot_that_heals_is_recovering_then_recovered()
    {
        var readings = new TreatedCow(1).Readings(Healing, 60);
        var early = TreatedCow.Assess(readings, 12.5);
        Assert.Equal(RecoveryStatus.Recovering, early.Status);
        Assert.InRange(early.DropPercentNow!.Value, early.DropLowerPercent!.Value, early.DropUpperPercent!.Value);
        Assert.InRange(early.DropPercentAtTreatment!.Value, 11, 17);
        var late = TreatedCow.Assess(readings, 60);
        Assert.Equal(RecoveryStatus.Recovered, late.Status);
        Assert.InRange(late.RecoveredOn!.Value, new DateOnly(2026, 3, 10), new DateOnly(2026, 4, 14));
        Assert.StartsWith("Recovered: the right hind was shown on", late.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void Half_life_and_the_day_she_should_be_there_follow_the_curve()
    {
        var errors = new List<double>();
        for (var seed = 0; seed < 40; seed++)
        {
            var assessment = TreatedCow.Assess(new TreatedCow(200 + seed, sd: 0.8).Readings(t => 20 * Math.Exp(-t / 12), 20, dropBefore: 20), 18);
            if (assessment.ExpectedNormalOn is not { } day)
                continue;
            // The true curve enters the band where 20 exp(-t / 12) is as wide.
            errors.Add(day.DayNumber - new DateOnly(2026, 3, 3).DayNumber - 12 * Math.Log(20 / assessment.BandPercent!.Value));
            Assert.InRange(assessment.HalfLifeDays!.Value, 0.4 * 12 * Math.Log(2), 2.5 * 12 * Math.Log(2));
        }

        Assert.InRange(errors.Count, 20, 40);
        Assert.InRange(errors.Order().ElementAt(errors.Count / 2), -5, 5);
    }

    [Fact]
    public void A_foot_that_stands_still_is_stalled_and_not_before_its_time()
    {
        var readings = new TreatedCow(3).Readings(Still, 40);
        Assert.NotEqual(RecoveryStatus.Stalled, TreatedCow.Assess(readings, 10).Status);
        var stalled = TreatedCow.Assess(readings, 28);
        Assert.Equal(RecoveryStatus.Stalled, stalled.Status);
        Assert.True(stalled.IsNotRecovering);
        Assert.Null(stalled.ExpectedNormalOn);
    }

    [Fact]
    public void A_foot_that_carries_less_than_before_is_worse()
    {
        var readings = new TreatedCow(4).Readings(t => 14 + t, 12);
        Assert.Equal(RecoveryStatus.Worse, TreatedCow.Assess(readings, 12).Status);
        Assert.Contains("call the veterinarian", TreatedCow.Assess(readings, 12).Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void A_foot_that_had_healed_and_fails_again_is_worse()
    {
        var readings = new TreatedCow(5).Readings(t => t < 40 ? Healing(t) : 15, 46);
        Assert.Equal(RecoveryStatus.Recovered, TreatedCow.Assess(readings, 39.5).Status);
        Assert.Equal(RecoveryStatus.Worse, TreatedCow.Assess(readings, 46).Status);
    }

    [Fact]
    public void The_first_days_after_treatment_tell_nothing_and_are_shown()
    {
        var readings = new TreatedCow(6).Readings(t => 25, 60);
        var assessment = TreatedCow.Assess(readings, 2.9);
        Assert.Equal(RecoveryStatus.TooEarly, assessment.Status);
        Assert.InRange(assessment.DropPercentNow!.Value, 22, 28);
        Assert.Contains("that alone changes her walk", assessment.Explanation, StringComparison.Ordinal);
        Assert.Equal(RecoveryStatus.Worse, TreatedCow.Assess(readings, 8).Status);
    }

    [Fact]
    public void The_band_is_two_daily_deviations_and_at_most_five_per_cent()
    {
        var readings = new TreatedCow(7).Readings(Healing, 30);
        RecoveryAssessment With(double sd) => RecoveryAssessor.Assess(TreatedCow.Foot, readings, TreatedCow.Baseline with { DailySdPercent = sd }, TreatedCow.Day(30), TreatedCow.Options);
        Assert.Equal(2.4, With(1.2).BandPercent!.Value, 1e-12);
        Assert.Equal(5, With(3).BandPercent!.Value, 1e-12);
        Assert.InRange(TreatedCow.Assess(readings, 30).BandPercent!.Value, 1.5, 5);
    }

    [Fact]
    public void Never_recovered_while_a_block_or_wrap_is_on_nor_within_a_week_of_pain_relief()
    {
        var readings = new TreatedCow(8).Readings(t => 0, 60);
        foreach (var kind in (RecoveryMarkKind[])[RecoveryMarkKind.Block, RecoveryMarkKind.Wrap])
        {
            var worn = TreatedCow.Assess(readings, 60, new RecoveryMark(TreatedCow.Day(0), kind));
            Assert.NotEqual(RecoveryStatus.Recovered, worn.Status);
            Assert.All(worn.Days, day => Assert.True(day.IsMasked));
        }

        var relieved = Enumerable.Range(0, 10).Select(i => new RecoveryMark(TreatedCow.Day(6 * i), RecoveryMarkKind.PainRelief)).ToArray();
        Assert.NotEqual(RecoveryStatus.Recovered, TreatedCow.Assess(readings, 60, relieved).Status);

        // Off on day 28: seven days of her own walk, after three to settle, are the earliest proof.
        var off = TreatedCow.Assess(
            readings, 60, new RecoveryMark(TreatedCow.Day(0), RecoveryMarkKind.Block), new RecoveryMark(TreatedCow.Day(28), RecoveryMarkKind.BlockOff));
        Assert.Equal(RecoveryStatus.Recovered, off.Status);
        Assert.True(off.RecoveredOn >= new DateOnly(2026, 3, 3).AddDays(28 + 3 + 6), $"recovered on {off.RecoveredOn}");
        Assert.Equal([RecoveryMarkKind.Block, RecoveryMarkKind.BlockOff], off.Marks.Select(mark => mark.What));
    }

    [Fact]
    public void A_block_lost_or_replaced_counts_as_worn_only_while_it_was()
    {
        RecoveryMark[] marks =
        [
            new(TreatedCow.Day(0), RecoveryMarkKind.Block), new(TreatedCow.Day(8), RecoveryMarkKind.Block), new(TreatedCow.Day(8), RecoveryMarkKind.BlockLost),
            new(TreatedCow.Day(20), RecoveryMarkKind.BlockOff),
        ];
        var days = TreatedCow.Assess(new TreatedCow(9).Readings(Healing, 30), 30, marks).Days;
        Assert.All(days.Where(day => day.DaysSinceTreatment < 20), day => Assert.True(day.IsMasked));
        Assert.All(days.Where(day => day.DaysSinceTreatment > 24), day => Assert.False(day.IsMasked));
        Assert.All(days.Where(day => day.DaysSinceTreatment is > 12 and < 19), day => Assert.False(day.IsSettling));
    }

    [Fact]
    public void Silence_is_no_recovery()
    {
        var readings = new TreatedCow(10).Readings(Healing, 60);
        var silent = readings.Where(reading => reading.At < TreatedCow.Day(4)).ToList();
        var assessment = TreatedCow.Assess(silent, 60);
        Assert.NotEqual(RecoveryStatus.Recovered, assessment.Status);
        Assert.Equal(silent.Max(reading => reading.At), assessment.LastSeenAt);
        var unseen = TreatedCow.Assess(readings.Where(reading => reading.At < TreatedCow.Day(0)), 60);
        Assert.Equal((RecoveryStatus.TooEarly, null, null), (unseen.Status, unseen.DropPercentNow, unseen.LastSeenAt));
        Assert.Contains("has not been measured since", unseen.Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void A_normal_learnt_after_onset_is_not_used()
    {
        var readings = new TreatedCow(11).Readings(t => 0, 60);
        foreach (var baseline in (RecoveryBaseline?[])[null, new RecoveryBaseline(TreatedCow.Day(-5))])
        {
            var assessment = RecoveryAssessor.Assess(TreatedCow.Foot, readings, baseline, TreatedCow.Day(60), TreatedCow.Options);
            Assert.Equal(RecoveryStatus.TooEarly, assessment.Status);
            Assert.Contains("no normal of hers is known from before she went lame", assessment.Explanation, StringComparison.Ordinal);
        }

        var few = readings.Where(reading => reading.At > TreatedCow.Day(-12));
        Assert.Contains("fewer than 10 sound days", TreatedCow.Assess(few, 60).Explanation, StringComparison.Ordinal);
    }

    [Fact]
    public void What_comes_later_is_not_looked_at_and_a_new_treatment_ends_the_follow_up()
    {
        var readings = new TreatedCow(12).Readings(Healing, 60);
        var then = TreatedCow.Assess(readings.Where(reading => reading.At <= TreatedCow.Day(12)), 12);
        Assert.Equal(Describe(then), Describe(TreatedCow.Assess(readings, 12, new RecoveryMark(TreatedCow.Day(13), RecoveryMarkKind.Block))));
        var again = RecoveryAssessor.Assess(TreatedCow.Foot with { TreatedAgainAt = TreatedCow.Day(12) }, readings, TreatedCow.Baseline, TreatedCow.Day(60), TreatedCow.Options);
        Assert.Equal(Describe(then), Describe(again));
    }

    [Fact]
    public void Order_and_copies_of_readings_and_marks_change_nothing()
    {
        var readings = new TreatedCow(13).Readings(Healing, 20).ToArray();
        RecoveryMark[] marks = [new(TreatedCow.Day(0), RecoveryMarkKind.Wrap), new(TreatedCow.Day(3), RecoveryMarkKind.WrapOff), new(TreatedCow.Day(0), RecoveryMarkKind.PainRelief)];
        var expected = Describe(TreatedCow.Assess(readings, 20, marks));
        Gen.Select(Gen.Shuffle(readings.Concat(readings).ToArray()), Gen.Shuffle(marks.Concat(marks).ToArray()))
            .Sample((shuffled, shuffledMarks) => Describe(TreatedCow.Assess(shuffled, 20, shuffledMarks)) == expected, iter: 20);
    }

    // The promise of RecoveryProof: at most 5 % of whole follow-ups call a foot recovered whose load lies at the edge of the band.
    [Fact]
    public void A_foot_at_the_edge_of_the_band_is_seldom_called_recovered()
    {
        const int Cows = 400;
        var baseline = TreatedCow.Baseline with { DailySdPercent = 1.5 };
        var wrong = Enumerable.Range(0, Cows).Count(seed => RecoveryAssessor.Assess(
            TreatedCow.Foot, new TreatedCow(1000 + seed).Readings(t => 3, 75), baseline, TreatedCow.Day(75), TreatedCow.Options).RecoveredOn is not null);
        // 5 % of 400 is 20; 34 is the 99.9 % quantile of that binomial.
        Assert.InRange(wrong, 0, 34);
    }

    [Fact]
    public void Most_healed_feet_are_shown_to_have_recovered()
    {
        const int Cows = 100;
        var shown = Enumerable.Range(0, Cows).Count(seed => TreatedCow.Assess(new TreatedCow(5000 + seed).Readings(Healing, 75), 75).Status == RecoveryStatus.Recovered);
        Assert.InRange(shown, 85, Cows);
    }

    [Fact]
    public void Healing_feet_are_seldom_called_stalled_or_worse()
    {
        const int Cows = 100;
        var wrong = Enumerable.Range(0, Cows).Count(seed =>
        {
            var readings = new TreatedCow(7000 + seed).Readings(Healing, 40);
            return new[] { 7, 14, 21, 28, 35 }.Any(day => TreatedCow.Assess(readings, day).IsNotRecovering);
        });
        Assert.InRange(wrong, 0, 10);
    }

    [Fact]
    public void The_interval_of_the_drop_holds_the_true_one_about_as_often_as_it_says()
    {
        const int Cows = 200;
        double Course(double t) => 2 + 12 * Math.Exp(-t / 8);
        var held = Enumerable.Range(0, Cows).Count(seed =>
        {
            var assessment = TreatedCow.Assess(new TreatedCow(8000 + seed).Readings(Course, 20), 20);
            var truth = Course(assessment.Days[^1].DaysSinceTreatment);
            return assessment.DropLowerPercent <= truth && truth <= assessment.DropUpperPercent;
        });
        // 95 % of 200 is 190; 179 is the 0.1 % quantile of that binomial, and the spread itself is estimated.
        Assert.InRange(held, 175, Cows);
    }

    [Theory]
    [InlineData(8)]
    [InlineData(12)]
    public void A_foot_that_stands_still_is_found_within_weeks(double drop)
    {
        const int Cows = 50;
        var found = Enumerable.Range(0, Cows).Count(seed =>
        {
            var readings = new TreatedCow(4000 + seed).Readings(_ => drop, 28, drop);
            return Enumerable.Range(14, 15).Any(day => TreatedCow.Assess(readings, day).Status == RecoveryStatus.Stalled);
        });
        Assert.InRange(found, 45, Cows);
    }

    private static string Describe(RecoveryAssessment a) => string.Join(
        '|', a.Status, a.DropPercentNow, a.DropLowerPercent, a.DropUpperPercent, a.HalfLifeDays, a.ExpectedNormalOn, a.RecoveredOn, a.BandPercent, a.LastSeenAt, a.Explanation,
        string.Join(',', a.Days), string.Join(',', a.Marks));
}
