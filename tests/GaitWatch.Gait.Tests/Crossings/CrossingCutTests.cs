namespace GaitWatch.Gait.Tests;

/// <summary>Where one crossing ends and the next begins, and what is none.</summary>
public class CrossingCutTests
{
    private static readonly CrossingAnalyser s_analyser = new(TwinPlate.Default, new GaitOptions());

    [Fact]
    public void An_empty_platform_has_no_crossing_and_a_zero()
    {
        var analysis = Tape.Analyse(Tape.Blank(TwinPlate.Default, 3, 200).Noisy(1));
        Assert.Empty(analysis.Crossings);
        Assert.Single(analysis.Zeros);
        Assert.False(analysis.BeginsLoaded);
        Assert.Null(analysis.LoadedSince);
    }

    [Fact]
    public void No_frames_hold_nothing()
    {
        var analysis = s_analyser.Analyse([]);
        Assert.Empty(analysis.Crossings);
        Assert.Empty(analysis.Zeros);
        Assert.Null(analysis.LoadedSince);
    }

    [Fact]
    public void One_cow_is_one_crossing_with_a_zero_on_each_side()
    {
        var analysis = Tape.Analyse(Tape.Walk(new HalfSineCow()).Noisy(2));
        var crossing = Assert.Single(analysis.Crossings);
        Assert.Empty(crossing.Reasons);
        Assert.Equal(2, analysis.Zeros.Length);
        Assert.InRange(crossing.FirstContact.Seconds(), 0.98, 1.02);
    }

    [Fact]
    public void A_stream_without_end_is_cut_cow_by_cow()
    {
        var samples = Tape.Blank(TwinPlate.Default, 70, 200);
        for (var cow = 0; cow < 10; cow++)
            new HalfSineCow { FirstContactSeconds = 1 + (6.3 * cow), WeightKg = 500 + (20 * cow) }.Walk(TwinPlate.Default, 200, samples);
        var crossings = Tape.Analyse(samples.Noisy(3)).Crossings;
        Assert.Equal(10, crossings.Length);
        for (var cow = 0; cow < 10; cow++)
        {
            Assert.Empty(crossings[cow].Reasons);
            Assert.InRange(crossings[cow].FirstContact.Seconds(), 0.97 + (6.3 * cow), 1.03 + (6.3 * cow));
            Assert.InRange(crossings[cow].WeightKg!.Value, 0.985 * (500 + (20 * cow)), 1.015 * (500 + (20 * cow)));
        }
    }

    [Fact]
    public void A_cow_that_follows_a_quarter_of_a_second_after_the_last_lift_is_a_crossing_of_her_own()
    {
        var first = new HalfSineCow();
        var lastLift = Legs.All.Max(leg => first.Footfalls(2.4)[leg].Max(footfall => footfall.Lift));
        var samples = Tape.Blank(TwinPlate.Default, 10, 200);
        first.Walk(TwinPlate.Default, 200, samples);
        new HalfSineCow { FirstContactSeconds = lastLift + 0.26 }.Walk(TwinPlate.Default, 200, samples);
        var crossings = Tape.Analyse(samples.Noisy(4)).Crossings;
        Assert.Equal(2, crossings.Length);
        Assert.All(crossings, crossing => Assert.Empty(crossing.Reasons));
    }

    [Fact]
    public void A_window_that_begins_under_load_says_so()
    {
        var frames = Tape.Frames(Tape.Walk(new HalfSineCow()).Noisy(5), 200);
        var analysis = s_analyser.Analyse(frames[8..]);
        Assert.True(analysis.BeginsLoaded);
        Assert.Contains(QualityReason.GapInFrames, Assert.Single(analysis.Crossings).Reasons);
    }

    [Fact]
    public void A_window_that_ends_under_load_says_since_when_and_reports_no_crossing()
    {
        var frames = Tape.Frames(Tape.Walk(new HalfSineCow()).Noisy(6), 200);
        var analysis = s_analyser.Analyse(frames[..10]);
        Assert.Empty(analysis.Crossings);
        Assert.InRange(analysis.LoadedSince!.Value.Seconds(), 0.95, 1.05);
    }

    [Fact]
    public void A_frame_lost_under_load_is_a_gap()
    {
        var frames = Tape.Frames(Tape.Walk(new HalfSineCow()).Noisy(7), 200);
        frames.RemoveAt(8);
        var crossing = Assert.Single(s_analyser.Analyse(frames).Crossings);
        Assert.Equal(QualityReason.GapInFrames, crossing.Reasons[0]);
        Assert.Null(crossing.WeightKg);
        Assert.Equal(default, crossing.Legs);
    }

    [Fact]
    public void Frames_that_break_off_under_load_are_a_gap_once_the_device_is_back()
    {
        var frames = Tape.Frames(Tape.Walk(new HalfSineCow()).Noisy(8), 200);
        var later = new Frame(99, frames[^1].T0.AddMinutes(3), 200, [.. frames[0].SamplesKg]);
        var analysis = s_analyser.Analyse([.. frames[..10], later]);
        Assert.Equal(QualityReason.GapInFrames, Assert.Single(Assert.Single(analysis.Crossings).Reasons));
        Assert.Null(analysis.LoadedSince);
    }

    [Fact]
    public void A_frame_lost_on_an_empty_platform_is_no_gap()
    {
        var samples = Tape.Blank(TwinPlate.Default, 12, 200);
        new HalfSineCow { FirstContactSeconds = 3 }.Walk(TwinPlate.Default, 200, samples);
        var frames = Tape.Frames(samples.Noisy(9), 200);
        frames.RemoveAt(3);
        frames.RemoveAt(40);
        Assert.Empty(Assert.Single(s_analyser.Analyse(frames).Crossings).Reasons);
    }

    [Fact]
    public void Pauses_of_the_device_between_cows_are_no_gap()
    {
        var first = Tape.Frames(Tape.Walk(new HalfSineCow()).Noisy(10), 200);
        var second = Tape.Frames(Tape.Walk(new HalfSineCow()).Noisy(10), 200)
            .Select(frame => new Frame(frame.Seq + 1000, frame.T0.AddMinutes(5), frame.Hz, frame.SamplesKg));
        Assert.All(s_analyser.Analyse([.. first, .. second]).Crossings, crossing => Assert.Empty(crossing.Reasons));
    }

    [Fact]
    public void A_step_of_the_zero_is_no_crossing()
    {
        var samples = Tape.Blank(TwinPlate.Default, 8, 200).Noisy(11, offsetKg: 5);
        for (var i = 800; i < samples[0].Length; i++)
            samples[0][i] += 9;
        var analysis = Tape.Analyse(samples);
        Assert.Empty(analysis.Crossings);
        Assert.True(analysis.Zeros[^1].Kg[0] > analysis.Zeros[0].Kg[0] + 8);
    }

    [Fact]
    public void A_bird_is_no_crossing()
    {
        var samples = Tape.Blank(TwinPlate.Default, 8, 200).Noisy(12);
        for (var i = 600; i < 1000; i++)
            HalfSineCow.Press(TwinPlate.Default, PlateSide.Left, 1.1, 1.5 + Math.Sin(0.2 * i), samples, i);
        Assert.Empty(Tape.Analyse(samples).Crossings);
    }

    [Fact]
    public void A_cow_standing_still_is_not_an_empty_platform()
    {
        var samples = Tape.Blank(TwinPlate.Default, 30, 200);
        for (var i = 400; i < 5000; i++)
        {
            HalfSineCow.Press(TwinPlate.Default, PlateSide.Left, 0.4, 150, samples, i);
            HalfSineCow.Press(TwinPlate.Default, PlateSide.Left, 1.8, 180, samples, i);
            HalfSineCow.Press(TwinPlate.Default, PlateSide.Right, 0.5, 140, samples, i);
            HalfSineCow.Press(TwinPlate.Default, PlateSide.Right, 1.9, 170, samples, i);
        }

        var analysis = Tape.Analyse(samples.Noisy(13));
        Assert.Contains(QualityReason.Stopped, Assert.Single(analysis.Crossings).Reasons);
        Assert.Equal(2, analysis.Zeros.Length);
    }

    [Theory]
    [InlineData(70)]
    [InlineData(30)]
    public void Something_light_standing_still_does_not_become_the_zero(double kg)
    {
        var samples = Tape.Blank(TwinPlate.Default, 20, 200).Noisy(14, offsetKg: 0);
        foreach (var cell in samples)
        {
            for (var i = 0; i < cell.Length; i++)
                cell[i] -= 14;
        }

        for (var i = 1000; i < 2400; i++)
            HalfSineCow.Press(TwinPlate.Default, PlateSide.Left, 1.2, kg, samples, i);
        var analysis = Tape.Analyse(samples);
        Assert.Equal(2, analysis.Zeros.Length);
        Assert.Equal(QualityReason.NotACow, Assert.Single(analysis.Crossings).Reasons[0]);
    }

    [Fact]
    public void The_zero_is_interpolated_across_the_crossing()
    {
        var still = Tape.Walk(new HalfSineCow());
        var drifting = Tape.Walk(new HalfSineCow());
        for (var cell = 0; cell < drifting.Length; cell++)
        {
            for (var i = 0; i < drifting[cell].Length; i++)
                drifting[cell][i] += (float)(-8 + (3 * cell) + (0.0015 * i * (cell + 1)));
        }

        var expected = Assert.Single(Tape.Analyse(still).Crossings);
        var actual = Assert.Single(Tape.Analyse(drifting).Crossings);
        foreach (var leg in Legs.All)
            Assert.Equal(expected.Legs[leg].LoadKg!.Value, actual.Legs[leg].LoadKg!.Value, 0.1);
    }

    [Fact]
    public void Without_an_empty_stretch_of_its_own_a_crossing_uses_the_zero_known_before()
    {
        var cow = new HalfSineCow();
        var footfalls = Legs.All.SelectMany(leg => cow.Footfalls(2.4)[leg]).ToArray();
        var from = (int)(200 * footfalls.Min(footfall => footfall.Contact)) - 3;
        var to = (int)(200 * footfalls.Max(footfall => footfall.Lift)) + 3;
        var trimmed = Tape.Walk(cow).Select(cell => cell[from..to]).ToArray();
        foreach (var cell in trimmed)
        {
            for (var i = 0; i < cell.Length; i++)
                cell[i] += 5;
        }

        var last = new Frame(999, Tape.Start.AddHours(1), 200, [.. trimmed.Select(_ => new float[100])]);
        var zero = new ZeroLevels(Tape.Start.AddMinutes(-5), [5, 5, 5, 5]);
        var known = s_analyser.Analyse([.. Tape.Frames(trimmed, 200), last], zero);
        Assert.Empty(Assert.Single(known.Crossings).Reasons);
        Assert.InRange(known.Crossings[0].WeightKg!.Value, 630, 650);
        Assert.True(known.BeginsLoaded);
    }
}
