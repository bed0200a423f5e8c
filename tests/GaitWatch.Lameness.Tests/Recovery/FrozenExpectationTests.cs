using CsCheck;
using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests;

public sealed class FrozenExpectationTests
{
    private static readonly PerLeg<double> Sound = new(0.27, 0.26, 0.23, 0.24);
    private static readonly PerLeg<double> Relearned = new(0.28, 0.27, 0.25, 0.20);

    [Fact]
    public void From_onset_on_the_expectation_is_the_last_one_before_whatever_was_learnt_since()
    {
        var frozen = FrozenExpectation.Of(TreatedCow.Foot, [Passage("c", 5, Relearned), Passage("a", -9, Relearned), Passage("b", -7, Sound), Passage("d", -5, Relearned)]);
        Assert.Equal([0.20, 0.24, 0.24, 0.24], frozen.Readings.Select(reading => reading.ExpectedShare).Select(share => Math.Round(share, 12)));
        Assert.Equal(new RecoveryBaseline(TreatedCow.Day(-7)), frozen.Baseline);
    }

    [Fact]
    public void What_moves_the_whole_herd_moves_the_expectation()
    {
        var then = Passage("a", -7, Sound, new Balances(0.1, 0, 0));
        var now = Passage("b", 5, Relearned, new Balances(0.1, 0, 0.05));
        var expected = FrozenExpectation.Of(TreatedCow.Foot, [then, now]).Readings[1].ExpectedShare;
        Assert.Equal(FrozenExpectation.Moved(Sound, default, new Balances(0, 0, 0.05)).Rh, expected, 1e-12);
        Assert.True(expected < Sound.Rh, "weight that the whole herd shifts to the left hind leg is not expected on the right");
    }

    // The definition of the balances, method of Egozcue J.J. et al. 2003.
    [Fact]
    public void Moved_shares_have_the_moved_balances_and_sum_to_one() => Gen.Select(Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5], Gen.Double[-0.5, 0.5]).Sample((foreHind, fore, hind) =>
    {
        var moved = FrozenExpectation.Moved(Sound, new Balances(0.1, -0.1, 0.2), new Balances(0.1 + foreHind, -0.1 + fore, 0.2 + hind));
        double[] differences =
        [
            ForeHind(moved) - ForeHind(Sound) - foreHind, Math.Sqrt(0.5) * (Math.Log(moved.Lf / moved.Rf) - Math.Log(Sound.Lf / Sound.Rf)) - fore,
            Math.Sqrt(0.5) * (Math.Log(moved.Lh / moved.Rh) - Math.Log(Sound.Lh / Sound.Rh)) - hind, moved.Lf + moved.Rf + moved.Lh + moved.Rh - 1,
        ];
        return differences.All(difference => Math.Abs(difference) < 1e-12);
    });

    [Fact]
    public void Without_a_passage_before_onset_there_is_no_baseline()
    {
        var frozen = FrozenExpectation.Of(TreatedCow.Foot, [Passage("c", 5, Sound), Passage("a", -7, null)]);
        Assert.Null(frozen.Baseline);
        Assert.Empty(frozen.Readings);
    }

    [Fact]
    public void Another_cows_passages_are_passed_over_and_copies_count_once()
    {
        var strange = Passage("x", -7, Relearned);
        var frozen = FrozenExpectation.Of(
            TreatedCow.Foot, [Passage("a", -8, Sound), Passage("a", -8, Sound), strange with { Assessment = strange.Assessment with { Reasons = [QualityReason.WrongCowSuspected] } }]);
        Assert.Single(frozen.Readings);
        Assert.Equal(TreatedCow.Day(-8), frozen.Baseline!.LearnedUntil);
    }

    private static double ForeHind(PerLeg<double> shares) => Math.Log(Math.Sqrt(shares.Lf * shares.Rf) / Math.Sqrt(shares.Lh * shares.Rh));

    private static AssessedShares Passage(string id, double day, PerLeg<double>? expected, Balances? common = null) => new(
        new PassageAssessment
        {
            PassageId = id, Cow = "417", At = TreatedCow.Day(day), Baseline = BaselineState.Watching, ExpectedShare = expected, CommonMovement = common,
        },
        Sound);
}
