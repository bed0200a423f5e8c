using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// Reasons that no single kind of bad crossing brings, on crossings of the second source: tags that are missing, double or read while the cow ahead is on the plates, weights
/// that no cow has, feet that cannot be told apart. (<c>wrong-cow-suspected</c>, and a weight far from her own, need a cow's history: GaitWatch.Lameness.)
/// </summary>
public class QualityReasonTests
{
    private static readonly Eid s_ahead = Eid.Parse("982000123456789"), s_behind = Eid.Parse("982000123456790");

    private static readonly CrossingAnalyser s_analyser = new(TwinPlate.Default, new GaitOptions());

    [Fact]
    public void With_no_tag_read() => Assert.Equal(["no-tag", "no-tag"], Tagged());

    /// <summary>The elder read has left the window when the cow behind comes.</summary>
    [Fact]
    public void With_two_tags_waiting() => Assert.Equal(["two-tags", ""], Tagged((-8, 0, s_ahead), (-1, 0, s_behind)));

    [Fact]
    public void With_the_tag_read_while_the_cow_ahead_is_on_the_plates() => Assert.Equal(["", ""], Tagged((-2, 0, s_ahead), (1.5, 0, s_behind)));

    [Fact]
    public void A_light_and_a_heavy_beast_are_no_cow_of_this_herd()
    {
        // Between a calf and the lightest cow (250 kg), and over the heaviest (1,100 kg): a good walk, scaled.
        Assert.Contains(QualityReason.WeightImplausible, Scaled(235).Reasons);
        Assert.Contains(QualityReason.WeightImplausible, Scaled(1180).Reasons);
        Assert.Empty(Scaled(640).Reasons);
        Assert.Empty(Scaled(280).Reasons);
        Assert.Equal(QualityReason.NotACow, Scaled(180).Reasons[0]);
    }

    /// <summary>Each word of the contract that a crossing alone can earn comes up somewhere among the second source's bad crossings.</summary>
    [Fact]
    public void Each_bad_kind_of_the_second_source_earns_its_word()
    {
        var seen = CrossingKinds.Bad.SelectMany(kind => Enumerable.Range(1, 6).SelectMany(seed => s_analyser.Analyse(Tape.Frames(SecondWalks.Of(kind, seed))).Crossings))
            .SelectMany(crossing => crossing.Reasons).ToHashSet();
        QualityReason[] expected =
        [
            QualityReason.NotACow, QualityReason.TwoCows, QualityReason.GapInFrames, QualityReason.Turned, QualityReason.BackedUp, QualityReason.Stopped, QualityReason.TooFast, QualityReason.Incomplete,
            QualityReason.FootfallsUnresolved,
        ];
        Assert.Empty(expected.Except(seen));
    }

    private static Crossing Scaled(double weightKg)
    {
        var walk = SecondWalks.Of(CrossingKind.Steady, 41);
        var factor = (float)(weightKg / walk.Truth.WeightKg);
        // The noise and the zero stay as they are.
        float[][] samples = [.. walk.Samples.Select(cell =>
        {
            var zero = cell[..100].Average();
            return cell.Select(kg => Math.Abs(kg - zero) < 3 ? kg : zero + (factor * (kg - zero))).ToArray();
        })];
        return Assert.Single(s_analyser.Analyse(Tape.Frames(samples, 200)).Crossings);
    }

    /// <summary>Two cows of the second source, one after the other, and the reads around them: seconds after the first contact of one of them.</summary>
    private static string[] Tagged(params (double After, int Cow, Eid Eid)[] reads)
    {
        SimulatedCrossing[] cows = [SecondWalks.Of(CrossingKind.Steady, 61), SecondWalks.Of(CrossingKind.Steady, 62)];
        float[][] samples = [.. Enumerable.Range(0, 4).Select(cell => cows.SelectMany(cow => cow.Samples[cell].Select(kg => kg - cow.Samples[cell][..100].Average())).ToArray())];
        var found = s_analyser.Analyse(Tape.Frames(samples, 200)).Crossings;
        Assert.Equal(2, found.Length);
        Assert.All(found, crossing => Assert.Empty(crossing.Reasons));
        var verdicts = TagAssignment.Assign(
            [.. found.Select(crossing => (crossing.FirstContact, crossing.LastLift))],
            [.. reads.Select(read => new TagRead(found[read.Cow].FirstContact.AddSeconds(read.After), read.Eid))],
            new GaitOptions().TagWindow);
        var passages = found.Zip(verdicts, (crossing, verdict) => crossing.ToPassage("parlour-exit", verdict)).ToArray();
        Assert.All(passages.Zip(new[] { s_ahead, s_behind }), pair => Assert.True(pair.First.Eid is null || pair.First.Eid == pair.Second));
        return [.. passages.Select(passage => string.Join(' ', passage.Reasons.Select(reason => reason.WireName())))];
    }
}
