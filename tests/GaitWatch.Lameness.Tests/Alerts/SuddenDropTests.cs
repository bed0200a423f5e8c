using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.AlertLives;

public sealed class SuddenDropTests
{
    /// <summary>A leg that loses a good third of its load overnight does not wait for a second passage.</summary>
    [Fact]
    public void A_severe_drop_is_raised_by_the_first_passage_that_shows_it()
    {
        var spec = new HerdSpec
        {
            Cows = 60, Days = 53, Seed = 12, EpisodesPer100CowYears = 0, SwappedTags = 0, Tails = 60, PassageDeviation = 0.025, DayDeviation = 0.012,
            NoiseLevelDeviation = 0.05,
            Given = [new Episode("7", AlertPattern.OneLeg, Leg.Lh, 50, 0.01, 0.35, 0.75, 1000)],
        };
        var herd = new SimulatedHerd(spec);
        var first = herd.Passages.First(p => p.Cow == "7" && p.At > Histories.At(50.02));
        var (changes, _, _) = Histories.Fold(herd.Passages);
        var raised = changes.First(c => c.Alert.Cow == "7" && c.At >= Histories.At(50));
        Assert.Equal(AlertChangeKind.Raised, raised.Kind);
        Assert.Equal(first.At, raised.At);
        Assert.Equal(Leg.Lh, raised.Alert.Leg);
        Assert.Equal(Urgency.Today, raised.Alert.Urgency);
        Assert.Contains("veterinarian", raised.Alert.Explanation, StringComparison.Ordinal);
    }

    /// <summary>One passage of another cow, or one stumble of a few standard deviations, raises nothing by itself.</summary>
    [Fact]
    public void One_odd_passage_raises_nothing()
    {
        var herd = new SimulatedHerd(new HerdSpec { Cows = 40, Days = 60, Seed = 13, EpisodesPer100CowYears = 0, SwappedTags = 0 });
        var odd = herd.Passages.FindIndex(p => p.Cow == "5" && p.At > Histories.At(50));
        var inputs = herd.Passages.Select((p, i) => i == odd ? Histories.Map(p, Shift) : p);
        var before = Histories.Fold(herd.Passages).Changes.FindAll(c => c.Alert.Cow == "5");
        Assert.Equal(before.Count, Histories.Fold(inputs).Changes.Count(c => c.Alert.Cow == "5"));

        static PerLeg<LegLoad> Shift(PerLeg<LegLoad> legs)
        {
            var shares = Unloading.OneLeg(legs.Select(l => l.Share!.Value), Leg.Rh, 0.15);
            return PerLeg.From(leg => legs[leg] with { Share = shares[leg] });
        }
    }
}
