namespace GaitWatch.Gait;

/// <summary>Lays frames end to end into stretches without a gap.</summary>
/// <remarks>
/// Time decides, the device's counter only sharpens: where the counter jumps, frames are known to be lost, so less
/// tolerance is given to the clock. What came twice is taken once.
/// </remarks>
internal static class FrameAssembly
{
    /// <summary>How far a frame's time may be off from where the one before it ended: two samples, and the millisecond it is rounded to.</summary>
    private const double JitterSamples = 2.01;

    /// <summary>No cell under a cattle platform reads this much, kg: such a sample is broken, not heavy.</summary>
    private const float UnreadableKg = 20_000;

    private const double LowestHz = 10;
    private const double HighestHz = 20_000;

    /// <summary>The stretches in the frames, in order of time.</summary>
    /// <param name="frames">Frames in order of <see cref="Frame.T0"/>. A frame that cannot be read leaves a gap.</param>
    /// <param name="cells">Cells of the platform.</param>
    public static List<Stretch> Assemble(IReadOnlyList<Frame> frames, int cells)
    {
        var stretches = new List<Stretch>();
        var slices = new List<Slice>();
        Slice? last = null;
        foreach (var frame in frames)
        {
            if (!CanBeRead(frame, cells))
                continue;
            var slice = new Slice(frame, 0, frame.T0.UtcTicks);
            if (last is { } previous)
            {
                var samplesLate = (slice.Ticks - previous.EndTicks) / (double)TimeSpan.TicksPerSecond * frame.Hz;
                var alike = frame.Hz.Equals(previous.Frame.Hz);
                if (!alike || samplesLate > Tolerance(previous.Frame, frame))
                {
                    Close(slices, stretches);
                }
                else if (samplesLate < -JitterSamples - MillisecondSamples(frame.Hz))
                {
                    var known = (int)Math.Min(Math.Round(-samplesLate), frame.Count);
                    if (known >= frame.Count)
                        continue;
                    slice = new Slice(frame, known, slice.Ticks + SampleTicks.Of(known, frame.Hz));
                }
            }

            slices.Add(slice);
            last = slice;
        }

        Close(slices, stretches);
        return stretches;
    }

    private static double MillisecondSamples(double hz) => 0.001 * hz;

    private static double Tolerance(Frame previous, Frame next) =>
        next.Seq > previous.Seq + 1 ? 0.5 + MillisecondSamples(next.Hz) : JitterSamples + MillisecondSamples(next.Hz);

    private static bool CanBeRead(Frame frame, int cells)
    {
        if (frame.Count == 0 || frame.SamplesKg.Length != cells || !(frame.Hz is >= LowestHz and <= HighestHz))
            return false;
        foreach (var cell in frame.SamplesKg)
        {
            if (cell.Length != frame.Count)
                return false;
            foreach (var kg in cell)
            {
                if (!(Math.Abs(kg) <= UnreadableKg))
                    return false;
            }
        }

        return true;
    }

    private static void Close(List<Slice> slices, List<Stretch> stretches)
    {
        if (slices.Count == 0)
            return;
        var count = 0;
        var starts = new int[slices.Count];
        var ticks = new long[slices.Count];
        for (var k = 0; k < slices.Count; k++)
        {
            starts[k] = count;
            ticks[k] = slices[k].Ticks;
            count += slices[k].Count;
        }

        var cells = slices[0].Frame.SamplesKg.Length;
        var samples = new float[cells][];
        for (var cell = 0; cell < cells; cell++)
        {
            samples[cell] = new float[count];
            for (var k = 0; k < slices.Count; k++)
                slices[k].Frame.SamplesKg[cell].AsSpan(slices[k].From).CopyTo(samples[cell].AsSpan(starts[k]));
        }

        stretches.Add(new Stretch(slices[0].Frame.Hz, samples, starts, ticks));
        slices.Clear();
    }

    /// <summary>The samples of a frame from one on.</summary>
    private readonly record struct Slice(Frame Frame, int From, long Ticks)
    {
        public int Count => Frame.Count - From;

        public long EndTicks => Ticks + SampleTicks.Of(Count, Frame.Hz);
    }
}
