namespace GaitWatch.Simulator.Tests;

public class WalkTests
{
    private static readonly SimulatedPlatform s_perfect = SimulatedPlatform.Default with { Sensors = PlatformSensors.Perfect, IntervalKg = 0 };
    private static readonly SimulatedPlatform s_longPerfect = SimulatedPlatform.Of(6, 200) with { Sensors = PlatformSensors.Perfect, IntervalKg = 0 };

    public static TheoryData<CrossingKind> Good => [CrossingKind.Steady, CrossingKind.Varied];

    [Fact]
    public void Over_a_steady_stride_the_legs_impulses_sum_to_weight_times_stride_time()
    {
        // Newton's second law: no net change of vertical momentum over a periodic stride.
        for (var seed = 0; seed < 100; seed++)
        {
            var truth = WalkGenerator.Steady(seed, s_perfect).Truth;
            Assert.Equal(truth.WeightKg, truth.Legs!.Value.Values().Sum(leg => leg.LoadKg!.Value), 0.002 * truth.WeightKg);
            Assert.Equal(1, truth.Legs.Value.Values().Sum(leg => leg.Share!.Value), 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void What_all_cells_read_averages_her_weight_over_a_stride_and_swings_by_about_a_fifth_of_it(CrossingKind kind)
    {
        for (var seed = 0; seed < 60; seed++)
        {
            var crossing = WalkGenerator.Of(kind, seed, s_longPerfect);
            var truth = crossing.Truth;
            var count = (int)Math.Round(truth.StrideSeconds!.Value * crossing.Hz);
            var start = (int)(0.5 * (truth.FirstContactSeconds + truth.LastLiftSeconds) * crossing.Hz) - count / 2;
            var total = Enumerable.Range(start, count).Select(n => crossing.Samples.Sum(cell => cell[n]) / truth.WeightKg).ToArray();
            Assert.Equal(1, total.Average(), kind == CrossingKind.Steady ? 0.004 : 0.03);
            Assert.InRange(total.Min(), 0.70, 1);
            Assert.InRange(total.Max(), 1, 1.35);
        }
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void Strides_stances_speeds_weights_lie_in_a_walking_cows_range(CrossingKind kind)
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var truth = WalkGenerator.Of(kind, seed, s_perfect).Truth;
            Assert.InRange(truth.WeightKg, 450, 850);
            Assert.InRange(truth.StrideSeconds!.Value, 1.0, 2.2);
            Assert.InRange(truth.SpeedMetresPerSecond!.Value, 0.45, 1.6);
            foreach (var footfall in truth.Footfalls)
                Assert.InRange(footfall.StanceSeconds / footfall.StrideSeconds!.Value, 0.54, 0.79);
        }
    }

    [Theory]
    [InlineData(1.11, 1.26, 1.395)] // sound
    [InlineData(0.90, 1.48, 1.300)] // sole ulcer
    public void Stride_time_and_length_follow_speed_as_measured(double speed, double strideSeconds, double strideMetres)
    {
        // Flower F.C. et al. 2005, J Dairy Sci 88:3166-3173, group means; their standard errors are 0.03-0.05 s and 0.02-0.03 m.
        // A law that passes through two groups of different cows meets each within about two of those.
        Assert.Equal(strideSeconds, WalkSpec.UsualStrideSeconds(speed), 0.05);
        Assert.Equal(strideMetres, speed * WalkSpec.UsualStrideSeconds(speed), 0.05);
    }

    [Fact]
    public void A_fresh_milked_cows_stance_leaves_the_measured_swing()
    {
        // Flower F.C. et al. 2006, J Dairy Sci 89:2084: 0.97 m/s, stride 1.41 s, swing about 0.44 s: duty (1.41 - 0.44) / 1.41 = 0.688.
        Assert.Equal(0.688, new WalkSpec().DutyAt(1.41), 0.01);
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void Feet_fall_in_lateral_sequence(CrossingKind kind)
    {
        Foot[] order = [Foot.Lh, Foot.Lf, Foot.Rh, Foot.Rf];
        for (var seed = 0; seed < 100; seed++)
        {
            var feet = WalkGenerator.Of(kind, seed, s_longPerfect).Truth.Footfalls.Select(f => f.Foot).ToArray();
            // Only within the plate: at its ends some feet of the sequence fall on the floor.
            for (var i = 4; i + 5 < feet.Length; i++)
                Assert.Equal(order[(Array.IndexOf(order, feet[i]) + 1) % 4], feet[i + 1]);
        }
    }

    [Theory]
    [MemberData(nameof(Good))]
    public void A_hind_foot_lands_within_ten_centimetres_of_where_the_fore_foot_of_its_side_stood(CrossingKind kind)
    {
        for (var seed = 0; seed < 100; seed++)
        {
            var footfalls = WalkGenerator.Of(kind, seed, s_longPerfect).Truth.Footfalls;
            foreach (var hind in footfalls.Where(f => !f.Foot.IsFore() && f.X is > 0.2 and < 5.8))
            {
                var fore = footfalls.Last(f => f.Foot.IsFore() && f.Foot.IsLeft() == hind.Foot.IsLeft() && f.ContactSeconds < hind.ContactSeconds && f.X < hind.X + 0.5);
                Assert.InRange(hind.X - fore.X, -0.1001, 0.1001);
            }
        }
    }

    [Fact]
    public void Slow_walks_have_fore_and_hind_foot_side_by_side_on_one_plate()
    {
        var slow = Enumerable.Range(0, 200).Select(seed => WalkGenerator.Varied(seed, s_perfect).Truth)
            .Where(truth => truth.SpeedMetresPerSecond < 0.75).ToArray();
        Assert.NotEmpty(slow);
        var overlapping = slow.Count(truth => truth.Footfalls.Any(hind => !hind.Foot.IsFore() && truth.Footfalls.Any(fore =>
            fore.Foot.IsFore() && fore.Foot.IsLeft() == hind.Foot.IsLeft() && Math.Abs(fore.X - hind.X) < 0.11
            && fore.ContactSeconds < hind.ContactSeconds && fore.LiftSeconds > hind.ContactSeconds)));
        Assert.True(overlapping > slow.Length / 3, $"{overlapping} of {slow.Length}");
    }

    [Fact]
    public void At_most_one_fore_and_one_hind_foot_stand_on_a_plate()
    {
        for (var seed = 0; seed < 100; seed++)
        {
            foreach (var leg in WalkGenerator.Varied(seed, s_longPerfect).Truth.Footfalls.GroupBy(f => f.Foot))
            {
                foreach (var (before, after) in leg.Zip(leg.Skip(1)))
                    Assert.True(before.LiftSeconds < after.ContactSeconds);
            }
        }
    }

    [Theory]
    [InlineData(Foot.Lh, 0.20)]
    [InlineData(Foot.Rf, 0.10)]
    public void A_sore_leg_gives_up_load_mostly_to_its_opposite_and_stands_shorter(Foot sore, double drop)
    {
        var sound = WalkGenerator.Cross(new WalkSpec(), 5, s_longPerfect).Truth.Legs!.Value;
        var lame = WalkGenerator.Cross(new WalkSpec { SoreFoot = sore, LoadDrop = drop }, 5, s_longPerfect).Truth.Legs!.Value;
        Assert.Equal(sound[sore].Share!.Value * (1 - drop), lame[sore].Share!.Value, 1e-3);
        Assert.True(lame[sore.Opposite()].Share - sound[sore.Opposite()].Share > 0.5 * drop * sound[sore].Share);
        Assert.True(lame[sore].StanceSeconds < sound[sore].StanceSeconds);
        Assert.True(lame[sore.Opposite()].StanceSeconds > sound[sore.Opposite()].StanceSeconds);
    }

    [Theory]
    [InlineData(0.3, 0.0)]
    [InlineData(-0.3, 0.0)]
    [InlineData(0.0, 0.25)]
    public void Who_changes_speed_changes_her_stride_with_it(double change, double dip)
    {
        var truth = WalkGenerator.Cross(new WalkSpec { SpeedChange = change, SpeedDip = dip }, 5, s_longPerfect).Truth;
        var strides = truth.Footfalls.Where(f => f.IsWhole).OrderBy(f => f.X).Select(f => f.StrideSeconds!.Value).ToArray();
        var (first, middle, last) = (strides[0], strides[strides.Length / 2], strides[^1]);
        if (dip > 0)
            Assert.True(middle > 1.05 * first && middle > 1.05 * last);
        else
            Assert.True(change > 0 ? last < 0.92 * first : last > 1.08 * first);
        // Newton over the whole crossing: the legs' loads still sum to about her weight.
        Assert.Equal(truth.WeightKg, truth.Legs!.Value.Values().Sum(leg => leg.LoadKg!.Value), 0.01 * truth.WeightKg);
    }

    [Fact]
    public void Cells_tell_the_load_and_place_of_a_foot_standing_alone()
    {
        // Statics on the readings themselves: force = sum, place = sum(F x) / sum(F).
        var checkedFeet = 0;
        for (var seed = 0; seed < 30; seed++)
        {
            var crossing = WalkGenerator.Steady(seed, s_perfect);
            foreach (var footfall in crossing.Truth.Footfalls.Where(f => f.IsWhole))
            {
                var middle = 0.5 * (footfall.ContactSeconds + footfall.LiftSeconds);
                var others = crossing.Truth.Footfalls.Count(f => f.Foot.IsLeft() == footfall.Foot.IsLeft() && f.ContactSeconds < middle + 0.01 && f.LiftSeconds > middle - 0.01);
                if (others > 1)
                    continue;
                var n = (int)Math.Round(middle * crossing.Hz);
                double force = 0, moment = 0;
                for (var cell = 0; cell < crossing.Samples.Length; cell++)
                {
                    if (crossing.Platform.Cells[cell].IsLeft != footfall.Foot.IsLeft())
                        continue;
                    force += crossing.Samples[cell][n];
                    moment += crossing.Samples[cell][n] * crossing.Platform.Cells[cell].X;
                }

                checkedFeet++;
                Assert.Equal(footfall.X, moment / force, 0.003);
                Assert.InRange(force, 0.6 * footfall.PeakKg, 1.001 * footfall.PeakKg);
            }
        }

        Assert.True(checkedFeet > 30, $"{checkedFeet} feet stood alone");
    }

    [Fact]
    public void What_each_plate_reads_over_time_is_the_sum_of_its_footfalls_impulses()
    {
        foreach (var kind in Enum.GetValues<CrossingKind>())
        {
            for (var seed = 0; seed < 20; seed++)
            {
                var crossing = WalkGenerator.Of(kind, seed, s_perfect);
                var read = crossing.Samples.Sum(cell => cell.Sum(kg => (double)kg)) / crossing.Hz;
                Assert.Equal(crossing.Truth.Footfalls.Sum(f => f.ImpulseKgSeconds), read, 0.002 * read);
                if (kind == CrossingKind.TurnsBack)
                    continue;
                // Left feet load the left plate alone, unless she has turned round.
                var left = Enumerable.Range(0, 4).Where(i => crossing.Platform.Cells[i].IsLeft).Sum(i => crossing.Samples[i].Sum(kg => (double)kg)) / crossing.Hz;
                Assert.Equal(crossing.Truth.Footfalls.Where(f => f.Foot.IsLeft()).Sum(f => f.ImpulseKgSeconds), left, 0.002 * read);
            }
        }
    }

    [Fact]
    public void A_bouncing_plate_keeps_the_impulse()
    {
        // A linear oscillator passes a steady load unchanged, so it moves impulse in time and loses none.
        var platform = s_perfect with { Sensors = PlatformSensors.Perfect with { RingHz = 14, RingDamping = 0.1 } };
        for (var seed = 0; seed < 20; seed++)
        {
            var (still, bouncing) = (WalkGenerator.Steady(seed, s_perfect), WalkGenerator.Steady(seed, platform));
            Assert.Equal(still.Samples.Sum(cell => cell.Sum(kg => (double)kg)), bouncing.Samples.Sum(cell => cell.Sum(kg => (double)kg)), 0.001 * still.Samples.Sum(cell => cell.Sum(kg => (double)kg)));
            Assert.NotEqual(still.Samples[0], bouncing.Samples[0]);
        }
    }

    [Fact]
    public void Feet_partly_off_the_plate_are_said_to_be_not_whole()
    {
        var all = Enumerable.Range(0, 200).SelectMany(seed => WalkGenerator.Steady(seed, s_perfect).Truth.Footfalls).ToArray();
        Assert.Contains(all, f => !f.IsWhole);
        Assert.All(all.Where(f => !f.IsWhole), f => Assert.True(f.X < 0.065 || f.X > 2.4 - 0.065));
        Assert.All(all.Where(f => f.IsWhole), f => Assert.InRange(f.X, 0.065, 2.4 - 0.065));
        Assert.All(all.Where(f => !f.IsWhole), f => Assert.Null(f.LoadKg));
    }

    [Theory]
    [InlineData(1.8, 50, 2)]
    [InlineData(2.4, 1000, 3)]
    [InlineData(6.0, 128, 4)]
    public void Any_plate_and_rate_gives_finite_readings_with_empty_ends(double length, double hz, int cells)
    {
        for (var seed = 0; seed < 10; seed++)
        {
            var crossing = WalkGenerator.Varied(seed, SimulatedPlatform.Of(length, hz, cells, 0.05));
            Assert.Equal(2 * cells, crossing.Samples.Length);
            Assert.All(crossing.Samples, cell => Assert.All(cell, kg => Assert.True(float.IsFinite(kg))));
            Assert.True(crossing.Truth.FirstContactSeconds >= 0.5 && crossing.DurationSeconds - crossing.Truth.LastLiftSeconds >= 0.5);
        }
    }

    [Fact]
    public void Cells_err_as_their_sensors_say()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var crossing = WalkGenerator.Steady(seed);
            var empty = (int)(0.5 * crossing.Hz);
            foreach (var cell in crossing.Samples)
            {
                var mean = cell.Take(empty).Average(kg => (double)kg);
                var spread = Math.Sqrt(cell.Take(empty).Average(kg => (kg - mean) * (kg - mean)));
                Assert.InRange(mean, -15.5, 15.5);
                Assert.InRange(spread, 0.2, 1.0);
                Assert.All(cell, kg => Assert.Equal(Math.Round(kg * 10.0), kg * 10.0, 1e-3));
            }
        }
    }

    [Theory]
    [InlineData(CrossingKind.Steady)]
    [InlineData(CrossingKind.Varied)]
    [InlineData(CrossingKind.TwoCows)]
    [InlineData(CrossingKind.Stops)]
    public void The_same_seed_gives_the_same_crossing_another_seed_another(CrossingKind kind)
    {
        var (a, b, c) = (WalkGenerator.Of(kind, 42), WalkGenerator.Of(kind, 42), WalkGenerator.Of(kind, 43));
        Assert.Equal(a.Samples, b.Samples);
        Assert.Equal(a.Truth.Footfalls.AsEnumerable(), b.Truth.Footfalls.AsEnumerable());
        Assert.NotEqual(a.Samples[0], c.Samples[0]);
    }
}
