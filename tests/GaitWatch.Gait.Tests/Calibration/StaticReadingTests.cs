using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

public class StaticReadingTests
{
    private static readonly TwinPlate s_platform = TwinPlate.Default;

    [Fact]
    public void A_resting_weight_is_steady_and_read_to_its_noise()
    {
        // 100 kg half way: the lever rule puts 50 kg on each cell.
        var samples = TestWeight.Readings(Quiet(noise: 0.6), 100, true, 1.2, 3, 0.5, 7);
        var reading = StaticReading.Of(s_platform, Tape.Frames(Cut(samples, 600), 200), TimeSpan.FromSeconds(1))!;
        Assert.True(reading.IsSteady);
        Assert.Equal(200, reading.Samples);
        Assert.InRange(reading.Kg[0], 49.8, 50.2);
        Assert.InRange(reading.Kg[1], 49.8, 50.2);
        Assert.InRange(reading.Kg[2], -0.2, 0.2);
        Assert.All(reading.SpreadKg, spread => Assert.InRange(spread, 0.5, 0.7));
        Assert.Equal(Tape.Start.AddSeconds(599 / 200.0), reading.To);
        Assert.Equal(Tape.Start.AddSeconds(400 / 200.0), reading.From);
    }

    [Fact]
    public void A_weight_being_set_down_is_not_steady()
    {
        var samples = TestWeight.Readings(Quiet(noise: 0.3), 60, true, 0.2, 3, 0.5, 8);
        Assert.False(StaticReading.Of(s_platform, Tape.Frames(Cut(samples, 150), 200), TimeSpan.FromSeconds(0.7))!.IsSteady);
    }

    [Fact]
    public void A_walking_cow_is_not_steady()
    {
        var crossing = WalkGenerator.Steady(3);
        var middle = crossing.SampleCount / 2;
        Assert.False(StaticReading.Of(s_platform, Tape.Frames(Cut(crossing.Samples, middle), 200), TimeSpan.FromSeconds(1))!.IsSteady);
    }

    [Fact]
    public void Only_the_end_without_a_gap_is_read()
    {
        var frames = Tape.Frames(Tape.Blank(s_platform, 3, 200), 200);
        frames.RemoveAt(frames.Count - 3);
        Assert.Equal(100, StaticReading.Of(s_platform, frames, TimeSpan.FromSeconds(2))!.Samples);
        Assert.Null(StaticReading.Of(s_platform, [], TimeSpan.FromSeconds(2)));
    }

    internal static SimulatedPlatform Quiet(double noise, params double[] gains) => SimulatedPlatform.Default with
    {
        Sensors = new PlatformSensors { NoiseKg = noise, Gain = [.. gains] },
    };

    private static float[][] Cut(float[][] samples, int count) => [.. samples.Select(cell => cell[..count])];
}
