using CsCheck;
using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>What holds of every crossing, whatever it is.</summary>
public class AnalysisLawTests
{
    private static readonly CrossingAnalyser s_analyser = new(TwinPlate.Default, new GaitOptions());

    private static readonly Gen<SimulatedCrossing> s_crossing =
        Gen.Select(Gen.Enum<CrossingKind>(), Gen.Int[1, 100_000]).Select((kind, seed) => WalkGenerator.Of(kind, seed));

    /// <summary>Crossings of all three sources; the third makes good ones only.</summary>
    private static readonly Gen<SimulatedCrossing> s_ofAnySource =
        Gen.Select(Gen.Int[0, 2], Gen.Enum<CrossingKind>(), Gen.Int[1, 100_000]).Select((source, kind, seed) => Of(source, kind, seed));

    private static SimulatedCrossing Of(int source, CrossingKind kind, long seed) => source switch
    {
        0 => WalkGenerator.Of(kind, seed),
        1 => SecondWalks.Of(kind, seed),
        _ => ThirdWalks.Of(kind.IsGood() ? kind : CrossingKind.Varied, seed),
    };

    [Fact]
    public void Mirrored_plates_give_mirrored_legs() => s_ofAnySource.Sample(
        crossing =>
        {
            // The default platform's cells are l0 l1 r0 r1.
            var seen = s_analyser.Analyse(Tape.Frames(crossing));
            var mirrored = s_analyser.Analyse([.. Tape.Frames(crossing).Select(frame =>
                new Frame(frame.Seq, frame.T0, frame.Hz, [frame.SamplesKg[2], frame.SamplesKg[3], frame.SamplesKg[0], frame.SamplesKg[1]]))]);
            Assert.Equal(seen.Crossings.Length, mirrored.Crossings.Length);
            foreach (var (a, b) in seen.Crossings.Zip(mirrored.Crossings))
            {
                Assert.Equal([.. a.Reasons], b.Reasons.ToArray());
                Near(a.Legs, b.Legs.Mirrored(), 1e-7);
            }
        },
        iter: 200);

    /// <summary>
    /// The seeds are fixed: a shift changes the last digits of every sample, and of tens of thousands of crossings one always lies
    /// so near a limit that this turns a reason.
    /// </summary>
    public static TheoryData<CrossingKind> Shifted => [.. Enum.GetValues<CrossingKind>()];

    [Theory]
    [MemberData(nameof(Shifted))]
    public void Shifting_all_zeros_changes_nothing(CrossingKind kind)
    {
        for (var source = 0; source < (kind.IsGood() ? 3 : 2); source++)
        {
            for (var seed = 1; seed <= (source == 0 ? 12 : 6); seed++)
                HoldsShifted(Of(source, kind, seed), seed);
        }
    }

    private static void HoldsShifted(SimulatedCrossing crossing, int seed)
    {
        var random = new Random(seed);
        float[] shifts = [.. Enumerable.Range(0, 4).Select(_ => (8 * random.NextSingle()) - 4)];
        var seen = s_analyser.Analyse(Tape.Frames(crossing));
        var shifted = s_analyser.Analyse([.. Tape.Frames(crossing).Select(frame => new Frame(
            frame.Seq, frame.T0, frame.Hz, [.. frame.SamplesKg.Select((cell, c) => cell.Select(kg => kg + shifts[c]).ToArray())]))]);
        Assert.Equal(seen.Crossings.Length, shifted.Crossings.Length);
        foreach (var (a, b) in seen.Crossings.Zip(shifted.Crossings))
        {
            Assert.Equal([.. a.Reasons], b.Reasons.ToArray());
            // Readings are of single precision: shifted, their last digits change.
            Near(a.Legs, b.Legs, 2e-5);
        }
    }

    [Fact]
    public void Two_windows_that_hold_a_crossing_and_its_empties_give_the_same_crossing() => Gen.Select(
        Gen.Int[1, 100_000].Array[3], Gen.Int[1, 49], Gen.Int[0, 12], Gen.Int[0, 12]).Sample(
        (seeds, size, skipped, dropped) =>
        {
            // Three cows one after the other; the windows cut into the first and the last.
            var parts = seeds.Select((seed, k) => WalkGenerator.Of(k == 1 ? CrossingKind.Varied : CrossingKind.Steady, seed, s_quietly)).ToArray();
            float[][] samples = [.. Enumerable.Range(0, 4).Select(cell => parts.SelectMany(part => part.Samples[cell]).ToArray())];
            var frames = Tape.Frames(samples, 200, size + 20);
            var wide = s_analyser.Analyse(frames);
            var first = parts[0].SampleCount - 100;
            var end = parts[0].SampleCount + parts[1].SampleCount + 100;
            var narrow = s_analyser.Analyse([.. frames.Where(frame =>
                (frame.T0.Seconds() * 200) + frame.Count > first - (skipped * 20) && frame.T0.Seconds() * 200 < end + (dropped * 20))]);
            var from = (parts[0].SampleCount / 200.0) + 0.3;
            var to = ((parts[0].SampleCount + parts[1].SampleCount) / 200.0) - 0.3;
            var a = Assert.Single(wide.Crossings, crossing => crossing.FirstContact.Seconds() > from && crossing.FirstContact.Seconds() < to);
            var b = Assert.Single(narrow.Crossings, crossing => crossing.FirstContact.Seconds() > from && crossing.FirstContact.Seconds() < to);
            Same(a, b);
        },
        iter: 100);

    [Fact]
    public void Time_reversed_a_walk_is_none() => Gen.Select(Gen.Int[0, 2], Gen.Bool, Gen.Int[1, 100_000]).Sample(
        (source, varied, seed) =>
        {
            var crossing = Of(source, varied ? CrossingKind.Varied : CrossingKind.Steady, seed);
            float[][] reversed = [.. crossing.Samples.Select(cell => cell.Reverse().ToArray())];
            var found = s_analyser.Analyse(Tape.Frames(reversed, 200)).Crossings;
            Assert.NotEmpty(found);
            Assert.All(found, each => Assert.NotEmpty(each.Reasons));
        },
        iter: 200);

    private static readonly Gen<(SimulatedCrossing Crossing, int Size, int[] Removed, int[] Shifts, int Dead)> s_scrambled =
        Gen.Select(s_crossing, Gen.Int[1, 90], Gen.Int[0, 30].Array[0, 6], Gen.Int[-2000, 2000].Array[0, 4], Gen.Int[0, 3]);

    [Fact]
    public void Cut_copied_and_scrambled_recordings_give_sane_figures() =>
        Gen.Select(s_ofAnySource, Gen.Int[1, 90], Gen.Int[0, 30].Array[0, 6], Gen.Int[-2000, 2000].Array[0, 4], Gen.Int[0, 3]).Sample(Scrambled, iter: 300);

    [Fact]
    public void Footfall_times_that_hardly_tell_a_stride_from_its_change_give_sane_figures() =>
        s_scrambled.Sample(Scrambled, seed: "fVpKExxppbM1", iter: 1);

    private static void Scrambled((SimulatedCrossing Crossing, int Size, int[] Removed, int[] Shifts, int Dead) given)
    {
        var frames = Tape.Frames(given.Crossing, given.Size);
        foreach (var at in given.Removed.Where(at => at < frames.Count))
            frames.RemoveAt(at);
        foreach (var shift in given.Shifts)
            frames.Add(new Frame(7, frames[frames.Count / 2].T0.AddMilliseconds(shift), 200, frames[frames.Count / 2].SamplesKg));
        if (given.Dead > 0)
            frames = [.. frames.Select(frame => new Frame(frame.Seq, frame.T0, frame.Hz, [.. frame.SamplesKg.Select((cell, c) => c < given.Dead ? new float[cell.Length] : cell)]))];
        Sane(s_analyser.Analyse([.. frames.OrderBy(frame => frame.T0)]));
    }

    [Fact]
    public void Random_signals_give_sane_figures()
    {
        float[] specials = [float.NaN, float.PositiveInfinity, float.NegativeInfinity, float.MaxValue, float.MinValue, float.Epsilon, 0, -0f, 1e4f, -1e4f, 350];
        var special = Gen.Int[0, specials.Length - 1].Select(at => specials[at]);
        var sample = Gen.Frequency((1, special), (30, Gen.Float[-20, 20]), (10, Gen.Float[0, 800]));
        var stretch = Gen.Select(Gen.Int[0, 60], sample, sample).SelectMany((count, from, to) =>
            Gen.OneOf(Gen.Const(Enumerable.Repeat(from, count).ToArray()), sample.Array[count], Gen.Const(Enumerable.Range(0, count).Select(i => from + ((to - from) * i / count)).ToArray())));
        var frame = Gen.Select(Gen.Int[0, 60], Gen.Double[0, 3000], Gen.Int[0, 100]).SelectMany((count, milliseconds, seq) =>
            stretch.Array[4].Select(cells => new Frame(seq, Tape.Start.AddMilliseconds(milliseconds), 200, cells)));
        frame.Array[0, 60].Sample(frames => Sane(s_analyser.Analyse([.. frames.OrderBy(each => each.T0)])), iter: 500);
    }

    /// <summary>Every figure stays sane, and none of it passes for a cow at her own pace.</summary>
    [Fact]
    public void Adversarial_signals_give_sane_figures_and_no_good_crossing()
    {
        foreach (var signal in AdversarialSignals.OfACrossing().Append(AdversarialSignals.FootfallsWithoutEnd()))
        {
            var analysis = s_analyser.Analyse(Tape.Frames(signal.SamplesKg, signal.Hz));
            Sane(analysis);
            Assert.True(analysis.Crossings.All(crossing => !crossing.Reasons.IsEmpty), signal.Name);
        }
    }

    /// <summary>One reading in the middle of a good walk that no cell can give: the frame that holds it is as good as lost.</summary>
    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    [InlineData(float.MaxValue)]
    [InlineData(-20_001f)]
    public void A_reading_that_is_none_leaves_a_gap(float kg)
    {
        var walk = WalkGenerator.Steady(5);
        float[][] samples = [.. walk.Samples.Select(cell => cell.ToArray())];
        samples[2][walk.SampleCount / 2] = kg;
        var analysis = s_analyser.Analyse(Tape.Frames(samples, 200));
        Sane(analysis);
        Assert.Equal(QualityReason.GapInFrames, Assert.Single(analysis.Crossings).Reasons[0]);
    }

    [Fact]
    public void Loud_noise_and_square_waves_give_sane_figures() =>
        Gen.Select(Gen.Int[1, 1_000_000], Gen.Int[2, 400], Gen.Float[0, 900], Gen.Float[0, 300]).Sample(Loud, iter: 300);

    [Fact]
    public void Feet_whose_times_have_crossed_give_sane_figures() => Loud(35432, 126, 6042f / 7, 175.26094f);

    private static void Loud(int seed, int period, float height, float noise)
    {
        var samples = Tape.Blank(TwinPlate.Default, 10, 200);
        var random = new Random(seed);
        for (var cell = 0; cell < 4; cell++)
        {
            var shift = random.Next(period);
            for (var i = 300; i < 1700; i++)
                samples[cell][i] = ((i + shift) / period % 2 * height) + (noise * (float)random.NextDouble());
        }

        Sane(Tape.Analyse(samples));
    }

    private static readonly SimulatedPlatform s_quietly = SimulatedPlatform.Default with
    {
        Sensors = new PlatformSensors { NoiseKg = 0.5, OffsetKg = [3, -7, 11, 0], RingHz = 20 },
    };

    private static void Near(PerLeg<LegLoad> a, PerLeg<LegLoad> b, double tolerance)
    {
        foreach (var leg in Legs.All)
        {
            Assert.Equal(a[leg].Footfalls, b[leg].Footfalls);
            Assert.Equal(a[leg].LoadKg ?? -1, b[leg].LoadKg ?? -1, 700 * tolerance);
            Assert.Equal(a[leg].Share ?? -1, b[leg].Share ?? -1, tolerance);
            Assert.Equal(a[leg].StanceSeconds ?? -1, b[leg].StanceSeconds ?? -1, tolerance);
        }
    }

    private static void Same(Crossing a, Crossing b)
    {
        Assert.Equal(a.FirstContact, b.FirstContact);
        Assert.Equal(a.LastLift, b.LastLift);
        Assert.Equal([.. a.Reasons], b.Reasons.ToArray());
        Assert.Equal(a.WeightKg, b.WeightKg);
        Assert.Equal(a.StrideSeconds, b.StrideSeconds);
        Assert.Equal(a.SpeedMetresPerSecond, b.SpeedMetresPerSecond);
        Assert.Equal(a.Legs, b.Legs);
        Assert.Equal(a.Footfalls.Length, b.Footfalls.Length);
        foreach (var (x, y) in a.Footfalls.Zip(b.Footfalls))
        {
            Assert.Equal((x.Leg, x.Contact, x.Lift, x.X, x.IsWhole), (y.Leg, y.Contact, y.Lift, y.X, y.IsWhole));
            Assert.Equal([.. x.CurveKg], y.CurveKg.ToArray());
        }
    }

    private static void Sane(WindowAnalysis analysis)
    {
        foreach (var crossing in analysis.Crossings)
        {
            Finite(crossing.WeightKg);
            Finite(crossing.StrideSeconds);
            Finite(crossing.SpeedMetresPerSecond);
            Assert.True(crossing.LastLift >= crossing.FirstContact);
            Assert.Equal(crossing.Reasons.Order().ToArray(), [.. crossing.Reasons]);
            var shares = 0.0;
            foreach (var leg in Legs.All)
            {
                var load = crossing.Legs[leg];
                Finite(load.LoadKg);
                Finite(load.PeakKg);
                Finite(load.StanceSeconds);
                Finite(load.ShareError);
                Assert.True(load.Share is null or (>= 0 and <= 1));
                Assert.True(load.ShareError is null or > 0);
                shares += load.Share ?? 0;
            }

            if (crossing.Reasons.IsEmpty)
                Assert.Equal(1, shares, 1e-9);
            foreach (var footfall in crossing.Footfalls)
            {
                Assert.True(double.IsFinite(footfall.X));
                Assert.True(footfall.Lift >= footfall.Contact);
                Assert.All(footfall.CurveKg, kg => Assert.True(float.IsFinite(kg) && kg >= 0));
            }
        }

        foreach (var zero in analysis.Zeros)
            Assert.All(zero.Kg, kg => Assert.True(double.IsFinite(kg)));
    }

    private static void Finite(double? figure) => Assert.True(figure is null || double.IsFinite(figure.Value));
}
