namespace GaitWatch.Gait;

/// <summary>Samples without a gap between them, laid end to end from the frames that brought them.</summary>
/// <remarks>
/// The time of a sample is told from the frame that brought it, never from the first frame of the stretch, so it does not
/// depend on how much of the past a window holds.
/// </remarks>
internal sealed class Stretch
{
    private readonly int[] _starts;
    private readonly long[] _ticks;

    /// <param name="hz">Sampling rate, Hz.</param>
    /// <param name="samplesKg">One array a cell, all equally long, every value finite.</param>
    /// <param name="starts">First index of each frame's samples, rising from 0.</param>
    /// <param name="ticks">UTC ticks of the sample at each of <paramref name="starts"/>.</param>
    public Stretch(double hz, float[][] samplesKg, int[] starts, long[] ticks)
    {
        Hz = hz;
        SamplesKg = samplesKg;
        _starts = starts;
        _ticks = ticks;
    }

    /// <summary>Sampling rate, Hz.</summary>
    public double Hz { get; }

    /// <summary>Samples in kg, one array a cell.</summary>
    public float[][] SamplesKg { get; }

    /// <summary>Samples of each cell.</summary>
    public int Count => SamplesKg[0].Length;

    /// <summary>When a sample was taken, to the millisecond; between two samples for a broken index.</summary>
    public DateTimeOffset TimeAt(double index)
    {
        var frame = Array.BinarySearch(_starts, (int)Math.Floor(Math.Clamp(index, 0, Count - 1)));
        if (frame < 0)
            frame = ~frame - 1;
        var ticks = _ticks[frame] + SampleTicks.Of(index - _starts[frame], Hz);
        var milliseconds = (long)Math.Round((double)ticks / TimeSpan.TicksPerMillisecond);
        return new DateTimeOffset(Math.Clamp(milliseconds * TimeSpan.TicksPerMillisecond, 0, DateTimeOffset.MaxValue.UtcTicks), TimeSpan.Zero);
    }
}
