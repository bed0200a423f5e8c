namespace GaitWatch.Gait.Tests;

public class FrameAssemblyTests
{
    private const double Hz = 200;

    [Fact]
    public void Frames_in_a_row_make_one_stretch() => Assert.Equal(500, Assert.Single(Assemble(Ramp(500))).Count);

    [Fact]
    public void A_jitter_of_two_samples_is_no_gap()
    {
        var frames = Ramp(500);
        for (var k = 0; k < frames.Count; k++)
            frames[k] = At(frames[k], frames[k].T0.AddMilliseconds(k % 2 == 0 ? 5 : -5));
        Assert.Equal(500, Assert.Single(Assemble(frames)).Count);
    }

    [Fact]
    public void A_frame_that_came_twice_counts_once()
    {
        var frames = Ramp(500);
        frames.Insert(4, frames[3]);
        Assert.Equal(Enumerable.Range(0, 500).Select(i => (float)i), Assert.Single(Assemble(frames)).SamplesKg[0]);
    }

    [Fact]
    public void What_overlaps_counts_once()
    {
        var frames = Ramp(500, size: 50);
        var overlapping = Ramp(500, size: 70);
        var both = frames.Concat(overlapping).OrderBy(frame => frame.T0).ToList();
        Assert.Equal(Enumerable.Range(0, 500).Select(i => (float)i), Assert.Single(Assemble(both)).SamplesKg[0]);
    }

    [Fact]
    public void A_lost_frame_parts_the_stretches()
    {
        var frames = Ramp(500);
        frames.RemoveAt(4);
        Assert.Equal([200, 250], Assemble(frames).Select(stretch => stretch.Count));
    }

    [Fact]
    public void A_counter_that_starts_again_is_no_gap()
    {
        var frames = Ramp(500);
        for (var k = 5; k < frames.Count; k++)
            frames[k] = new Frame(k - 5, frames[k].T0, Hz, frames[k].SamplesKg);
        Assert.Single(Assemble(frames));
    }

    [Fact]
    public void A_lost_frame_of_two_samples_is_seen_by_the_counter()
    {
        var frames = Ramp(500, size: 2);
        frames.RemoveAt(100);
        Assert.Equal(2, Assemble(frames).Count);
    }

    [Theory]
    [InlineData(float.NaN)]
    [InlineData(float.PositiveInfinity)]
    [InlineData(float.NegativeInfinity)]
    [InlineData(float.MaxValue)]
    public void A_frame_with_an_impossible_sample_leaves_a_gap(float sample)
    {
        var frames = Ramp(500);
        frames[4].SamplesKg[1][7] = sample;
        Assert.Equal([200, 250], Assemble(frames).Select(stretch => stretch.Count));
    }

    [Fact]
    public void A_frame_of_another_shape_leaves_a_gap()
    {
        var frames = Ramp(500);
        frames[4] = new Frame(4, frames[4].T0, Hz, [new float[50]]);
        frames[6] = new Frame(6, frames[6].T0, double.NaN, frames[6].SamplesKg);
        frames[8] = new Frame(8, frames[8].T0, Hz, [new float[50], new float[49]]);
        Assert.Equal([200, 50, 50, 50], Assemble(frames).Select(stretch => stretch.Count));
    }

    [Fact]
    public void The_time_of_a_sample_is_told_from_its_own_frame()
    {
        var stretch = Assert.Single(Assemble(Ramp(500)));
        Assert.Equal(Tape.Start.AddMilliseconds(1000 * 123 / Hz), stretch.TimeAt(123));
        Assert.Equal(Tape.Start.AddMilliseconds(1000 * 123.4 / Hz), stretch.TimeAt(123.4));
    }

    private static List<Stretch> Assemble(List<Frame> frames) => FrameAssembly.Assemble(frames, 2);

    private static List<Frame> Ramp(int count, int size = 50)
    {
        float[][] samples = [[.. Enumerable.Range(0, count).Select(i => (float)i)], new float[count]];
        return Tape.Frames(samples, Hz, size);
    }

    private static Frame At(Frame frame, DateTimeOffset t0) => new(frame.Seq, t0, frame.Hz, frame.SamplesKg);
}
