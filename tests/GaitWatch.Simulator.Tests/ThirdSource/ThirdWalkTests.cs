namespace GaitWatch.Simulator.Tests;

/// <summary>The third source keeps to the published facts and laws that the others keep to.</summary>
public class ThirdWalkTests
{
    public static TheoryData<CrossingKind> Good => [CrossingKind.Steady, CrossingKind.Varied];

    [Theory]
    [MemberData(nameof(Good))]
    public void It_is_a_recording_with_empty_plate_at_both_ends_and_the_same_for_a_seed(CrossingKind kind)
    {
        foreach (var length in new[] { 1.8, 2.4, 6 })
        {
            for (var seed = 1; seed <= 8; seed++)
            {
                var platform = SimulatedPlatform.Of(length, 200, 3);
                var crossing = ThirdWalks.Of(kind, seed, platform);
                Assert.True(crossing.Truth.FirstContactSeconds >= 0.5 && crossing.DurationSeconds - crossing.Truth.LastLiftSeconds >= 0.5);
                Assert.All(crossing.Samples, cell => Assert.All(cell, kg => Assert.True(float.IsFinite(kg))));
                Assert.Equal(crossing.Samples[0], ThirdWalks.Of(kind, seed, platform).Samples[0]);
            }
        }
    }

    [Fact]
    public void Bad_crossings_it_makes_none() =>
        Assert.All(CrossingKinds.Bad, kind => Assert.Throws<ArgumentOutOfRangeException>(() => ThirdWalks.Of(kind, 1)));

    [Theory]
    [MemberData(nameof(Good))]
    public void Strides_stances_and_speeds_lie_in_a_walking_cows_range(CrossingKind kind)
    {
        for (var seed = 0; seed < 150; seed++)
        {
            var truth = ThirdWalks.Of(kind, seed).Truth;
            Assert.InRange(truth.StrideSeconds!.Value, 0.95, 2.3);
            Assert.InRange(truth.SpeedMetresPerSecond!.Value, 0.45, 1.6);
            Assert.All(truth.Footfalls, footfall => Assert.InRange(footfall.StanceSeconds / footfall.StrideSeconds!.Value, 0.5, 0.82));
        }
    }

    /// <summary>On either plate at most one fore and one hind foot stand at any instant, as the wire contract says.</summary>
    [Theory]
    [MemberData(nameof(Good))]
    public void No_foot_comes_down_before_it_has_left(CrossingKind kind)
    {
        for (var seed = 0; seed < 150; seed++)
        {
            foreach (var foot in ThirdWalks.Of(kind, seed, SimulatedPlatform.Of(6, 200)).Truth.Footfalls.GroupBy(footfall => footfall.Foot))
                Assert.All(foot.Zip(foot.Skip(1)), pair => Assert.True(pair.First.LiftSeconds < pair.Second.ContactSeconds && pair.First.X < pair.Second.X));
        }
    }

    /// <summary>
    /// Newton's second law: over a stride that repeats itself the legs' impulses sum to weight x stride time. Here no stride quite does, so it holds over many: each
    /// within a few per cent, their mean within a few thousandths.
    /// </summary>
    [Fact]
    public void The_legs_loads_sum_to_the_weight()
    {
        var parts = Enumerable.Range(0, 120).Select(seed => ThirdWalks.Of(CrossingKind.Steady, seed, SimulatedPlatform.Of(4, 200)).Truth)
            .Select(truth => truth.Legs!.Value.Values().Sum(leg => leg.LoadKg!.Value) / truth.WeightKg).ToArray();
        Assert.All(parts, part => Assert.InRange(part, 0.975, 1.025));
        Assert.Equal(1, parts.Average(), 0.003);
    }

    /// <summary>Scott G.B. 1988, Vet Rec 123:245-248: fore feet peak at most at about 60 % of body weight, hind feet at about 50 %. Means of many are held to it.</summary>
    [Fact]
    public void Fore_feet_peak_at_most_at_about_60_and_hind_feet_at_about_50_percent_of_body_weight()
    {
        var peaks = Enumerable.Range(0, 150).Select(seed => ThirdWalks.Of(CrossingKind.Steady, seed).Truth)
            .SelectMany(truth => truth.Footfalls.Where(f => f.IsWhole).Select(f => (f.Foot, Part: f.PeakKg / truth.WeightKg))).ToArray();
        Assert.InRange(peaks.Where(peak => peak.Foot.IsFore()).Average(peak => peak.Part), 0.53, 0.61);
        Assert.InRange(peaks.Where(peak => !peak.Foot.IsFore()).Average(peak => peak.Part), 0.45, 0.53);
    }

    /// <summary>Same source: in front one peak about half way, behind two at about 1/4 and 3/4 of the stance, the second slightly smaller.</summary>
    [Fact]
    public void Support_curves_have_the_published_peaks()
    {
        for (var seed = 0; seed < 50; seed++)
        {
            var random = new SeededRandom(seed);
            var fore = Assert.Single(Peaks(SupportCurves.Draw(random, isFore: true).Footfall(random)));
            Assert.InRange(fore.Place, 0.40, 0.60);
            var hind = Peaks(SupportCurves.Draw(random, isFore: false).Footfall(random));
            Assert.Equal(2, hind.Count);
            Assert.Equal(0.25, hind[0].Place, 0.05);
            Assert.Equal(0.75, hind[1].Place, 0.05);
            Assert.InRange(hind[1].Value / hind[0].Value, 0.88, 1.01);
        }
    }

    /// <summary>Flower F.C. et al. 2005, J Dairy Sci 88:3166-3173, group means: 1.26 s and 1.395 m at 1.11 m/s, 1.48 s and 1.300 m at 0.90 m/s.</summary>
    [Theory]
    [InlineData(1.11, 1.26, 1.395)]
    [InlineData(0.90, 1.48, 1.300)]
    public void Stride_time_and_length_follow_speed_as_measured(double speed, double strideSeconds, double strideMetres)
    {
        Assert.Equal(strideSeconds, WanderingPace.StrideSeconds(speed, 1), 0.05);
        Assert.Equal(strideMetres, speed * WanderingPace.StrideSeconds(speed, 1), 0.05);
    }

    /// <summary>Through points on a straight line it is that line; between rising points it rises; its area is what a plain sum gives.</summary>
    [Fact]
    public void A_curve_through_points_goes_where_they_go()
    {
        var line = new KnotCurve((0, 1), (0.3, 1.6), (1, 3));
        Assert.Equal(2.2, line.At(0.6), 1e-12);
        var curve = new KnotCurve((0, 0), (0.1, 0.5), (0.3, 0.8), (0.5, 1), (0.9, 0.4), (1, 0));
        var heights = Enumerable.Range(0, 2001).Select(k => curve.At(k / 2000.0)).ToArray();
        Assert.All(heights.Take(1001).Zip(heights.Skip(1).Take(1000)), pair => Assert.True(pair.First <= pair.Second));
        Assert.All(heights.Skip(1000).Zip(heights.Skip(1001)), pair => Assert.True(pair.First >= pair.Second));
        Assert.Equal(heights.Average(), curve.Area, 1e-3);
        Assert.Equal(0.8, curve.At(0.3), 1e-12);
    }

    [Theory]
    [InlineData(0.5, 0.01)]
    [InlineData(1.0, -0.015)]
    [InlineData(0.02, 0.02)]
    public void A_sole_over_an_edge_leaves_its_part_on_the_plate(double middle, double ahead)
    {
        // Against a plain sum over slices of the sole.
        const double w = 0.065, length = 1;
        const int slices = 20_000;
        double part = 0, turning = 0, all = 0;
        for (var k = 0; k < slices; k++)
        {
            var s = -w + (2 * w * (k + 0.5) / slices);
            var pressure = (1 + (3 * ahead * s / (w * w))) / slices;
            Assert.True(pressure >= 0);
            all += pressure * s;
            if (middle + s is < 0 or > length)
                continue;
            part += pressure;
            turning += pressure * (middle + s);
        }

        var found = Footprint.On(middle, w, ahead, length);
        Assert.Equal(ahead, all, 1e-6);
        Assert.Equal(part, found.Part, 1e-4);
        Assert.Equal(turning / part, found.X, 1e-4);
    }

    /// <summary>A load at rest stands on the springs as statics say: the cells' parts sum to it and their moments to its moment, however stiff each is.</summary>
    [Fact]
    public void Springs_carry_what_stands_on_them()
    {
        double[] x = [0.1, 1.0, 2.3];
        var split = SpringFrame.Split(x, [0.9, 1.1, 1.0]);
        double[] carried = [.. split.Select(part => (part.PerLoad * 300) + (part.PerMoment * 300 * 0.7))];
        Assert.Equal(300, carried.Sum(), 1e-9);
        Assert.Equal(300 * 0.7, carried.Zip(x, (kg, at) => kg * at).Sum(), 1e-9);
        // Two springs are the lever whatever their stiffness: 300 kg at a quarter of the way put a quarter on the far one.
        Assert.Equal(75, SpringFrame.Split([0, 2], [0.5, 2]).Select(part => (part.PerLoad * 300) + (part.PerMoment * 300 * 0.5)).Last(), 1e-9);
    }

    private static List<(double Place, double Value)> Peaks(KnotCurve curve)
    {
        const int steps = 2000;
        return [.. Enumerable.Range(1, steps - 1)
            .Where(i => curve.At((i - 1.0) / steps) < curve.At((double)i / steps) && curve.At((double)i / steps) >= curve.At((i + 1.0) / steps))
            .Select(i => ((double)i / steps, curve.At((double)i / steps)))];
    }
}
