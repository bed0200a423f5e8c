namespace GaitWatch.Simulator.Tests;

/// <summary>The second source keeps to the same published facts and laws as the first.</summary>
public class SecondWalkTests
{
    public static TheoryData<CrossingKind> Kinds => [.. Enum.GetValues<CrossingKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_is_a_recording_with_empty_plate_at_both_ends_and_the_same_for_a_seed(CrossingKind kind)
    {
        foreach (var length in new[] { 1.8, 2.4, 6 })
        {
            for (var seed = 1; seed <= 8; seed++)
            {
                var platform = SimulatedPlatform.Of(length, 200);
                var crossing = SecondWalks.Of(kind, seed, platform);
                Assert.Equal(kind, crossing.Kind);
                Assert.True(crossing.Truth.FirstContactSeconds >= 0.5 && crossing.DurationSeconds - crossing.Truth.LastLiftSeconds >= 0.5);
                Assert.All(crossing.Samples, cell => Assert.All(cell, kg => Assert.True(float.IsFinite(kg))));
                Assert.Equal(kind.IsGood(), crossing.Truth.Legs is not null);
                Assert.Equal(crossing.Samples[0], SecondWalks.Of(kind, seed, platform).Samples[0]);
            }
        }
    }

    /// <summary>Newton's second law: over a stride of a steady walk the legs' impulses sum to weight x stride time. A wobble of 2 % of the speed leaves a little.</summary>
    [Fact]
    public void Over_a_steady_stride_the_legs_loads_sum_to_the_weight()
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var truth = SecondWalks.Of(CrossingKind.Steady, seed, SimulatedPlatform.Of(4, 200)).Truth;
            Assert.Equal(truth.WeightKg, truth.Legs!.Value.Values().Sum(leg => leg.LoadKg!.Value), 0.012 * truth.WeightKg);
        }
    }

    /// <summary>
    /// Scott G.B. 1988, Vet Rec 123:245-248: fore feet peak at most at about 60 % of body weight, hind feet at about 50 %. "About": single cows and
    /// footfalls differ, so means of many are held to it.
    /// </summary>
    [Fact]
    public void Fore_feet_peak_at_most_at_about_60_and_hind_feet_at_about_50_percent_of_body_weight()
    {
        var peaks = Enumerable.Range(0, 150).Select(seed => SecondWalks.Of(CrossingKind.Steady, seed).Truth)
            .SelectMany(truth => truth.Footfalls.Where(f => f.IsWhole).Select(f => (f.Foot, Part: f.PeakKg / truth.WeightKg))).ToArray();
        Assert.InRange(peaks.Where(peak => peak.Foot.IsFore()).Average(peak => peak.Part), 0.53, 0.61);
        Assert.InRange(peaks.Where(peak => !peak.Foot.IsFore()).Average(peak => peak.Part), 0.45, 0.53);
    }

    /// <summary>Same source: in front one peak about half way, behind two at about 1/4 and 3/4 of the stance, the second slightly smaller.</summary>
    [Fact]
    public void Foot_curves_have_the_published_peaks()
    {
        for (var seed = 0; seed < 50; seed++)
        {
            var random = new SeededRandom(seed);
            var fore = Assert.Single(Peaks(FootCurves.Fore(random)));
            Assert.InRange(fore.Place, 0.40, 0.60);
            var hind = Peaks(FootCurves.Hind(random));
            Assert.Equal(2, hind.Count);
            Assert.Equal(0.25, hind[0].Place, 0.05);
            Assert.Equal(0.75, hind[1].Place, 0.05);
            Assert.InRange(hind[1].Value / hind[0].Value, 0.88, 0.99);
        }
    }

    [Fact]
    public void A_body_carried_as_a_whole_weighs_what_it_weighs_at_every_moment()
    {
        // On 6 m all feet are on the plates for a while: then the plates carry her weight and her vertical acceleration, no more than a tenth of g here.
        var random = new SeededRandom(5);
        var cow = new WayOfWalking { WeightKg = 640, Shares = LoadShares.Of(0.54, 0.5, 0.5), StrideAtUsualSpeed = 1.26, StridePower = 0.6, Swing = 0.44, ForeLag = 0.25, IsWholeBody = true };
        var pace = new Pace(_ => 1.1, cow.StrideSecondsAt, 6, 0.3);
        var treads = SecondWalks.Treads(cow, pace, random);
        var sums = Enumerable.Range(0, 300).Select(k =>
        {
            var at = pace.SecondsAt(0.5 * pace.LastStrides) + (0.01 * k);
            return treads.Where(tread => at > tread.ContactSeconds && at < tread.LiftSeconds).Sum(tread => tread.Kg(at, tread.FractionAt(at))) / cow.WeightKg;
        }).ToArray();
        Assert.All(sums, sum => Assert.InRange(sum, 0.88, 1.12));
        Assert.Equal(1, sums.Take((int)Math.Round(cow.StrideSecondsAt(1.1) * 100)).Average(), 0.005);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(1.0)]
    [InlineData(0.93)]
    public void A_sole_over_an_edge_leaves_its_part_on_the_plate(double centre)
    {
        // Against a plain sum over slices of the sole.
        const double w = 0.06, length = 1;
        double part = 0, turning = 0;
        const int slices = 20_000;
        for (var k = 0; k < slices; k++)
        {
            var s = -w + (2 * w * (k + 0.5) / slices);
            if (centre + s is < 0 or > length)
                continue;
            var pressure = (1 + Math.Cos(Math.PI * s / w)) / slices;
            part += pressure;
            turning += pressure * (centre + s);
        }

        var found = SoleOnPlate.Of(centre, w, length);
        Assert.Equal(part, found.Part, 1e-6);
        Assert.Equal(turning / part, found.X, 1e-6);
    }

    private static List<(double Place, double Value)> Peaks(FootCurves curve)
    {
        const int steps = 2000;
        return [.. Enumerable.Range(1, steps - 1)
            .Where(i => curve.At((i - 1.0) / steps) < curve.At((double)i / steps) && curve.At((double)i / steps) >= curve.At((i + 1.0) / steps))
            .Select(i => ((double)i / steps, curve.At((double)i / steps)))];
    }
}
