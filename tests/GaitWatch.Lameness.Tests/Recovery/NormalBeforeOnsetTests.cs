using CsCheck;
using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests;

public sealed class NormalBeforeOnsetTests
{
    private static readonly PerLeg<double> Sound = new(0.27, 0.26, 0.23, 0.24);
    private static readonly PerLeg<double> Relearned = new(0.28, 0.27, 0.25, 0.20);

    [Fact]
    public void From_onset_on_the_expectation_is_the_last_one_before_whatever_was_learnt_since()
    {
        var (readings, baseline) = Of(Passage("a", -9, Relearned), Passage("b", -7, Sound), Passage("c", -5, Relearned), Passage("d", 5, Relearned));
        Assert.Equal([0.20, 0.24, 0.24, 0.24], readings.Select(reading => Math.Round(reading.ExpectedShare, 12)));
        Assert.All(readings, reading => Assert.Equal(Sound.Rh, reading.Share));
        Assert.Equal(new RecoveryBaseline(TreatedCow.Day(-7)), baseline);
    }

    [Fact]
    public void What_moves_the_whole_herd_moves_the_expectation() => Gen.Double[-0.3, 0.3].Sample(hind =>
    {
        var (readings, _) = Of(Passage("a", -7, Sound, new Balances(0.1, 0, 0)), Passage("b", 5, Relearned, new Balances(0.1, 0, hind)));
        // hind = sqrt(1/2) ln(lh / rh) moves, the other balances stay, the four close to 1: the pair keeps the product lh rh up to
        // the closure.
        var (lh, rh) = (Sound.Lh * Math.Exp(hind / Math.Sqrt(2)), Sound.Rh * Math.Exp(-hind / Math.Sqrt(2)));
        return Math.Abs(readings[1].ExpectedShare - rh / (Sound.Lf + Sound.Rf + lh + rh)) < 1e-12;
    });

    [Fact]
    public void Without_a_watched_passage_before_onset_there_is_no_normal()
    {
        Assert.Equal(([], null), Of(Passage("c", 5, Sound)));
        var learning = Passage("a", -7, Sound);
        Assert.Null(Of(learning with { Assessment = learning.Assessment with { Baseline = BaselineState.Learning } }).Baseline);
    }

    [Fact]
    public void Passages_that_speak_against_themselves_are_passed_over()
    {
        var strange = Passage("x", -7, Relearned);
        var (readings, baseline) = Of(Passage("a", -8, Sound), strange with { Assessment = strange.Assessment with { Reasons = [QualityReason.WrongCowSuspected] } });
        Assert.Single(readings);
        Assert.Equal(TreatedCow.Day(-8), baseline!.LearnedUntil);
    }

    private static (System.Collections.Immutable.ImmutableArray<LoadReading> Readings, RecoveryBaseline? Baseline) Of(params AssessedPassage[] passages) =>
        NormalBeforeOnset.Of(Leg.Rh, TreatedCow.Foot.OnsetAt, passages);

    private static AssessedPassage Passage(string id, double day, PerLeg<double>? expected, Balances? common = null) => new(
        Sound,
        new PassageAssessment
        {
            PassageId = id, Cow = "417", At = TreatedCow.Day(day), Baseline = BaselineState.Watching, ExpectedShare = expected, CommonMovement = common,
        });
}
