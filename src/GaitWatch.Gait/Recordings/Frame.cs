namespace GaitWatch.Gait;

/// <summary>A stretch of raw load-cell samples as a device sends it; the zero offset is not removed.</summary>
public sealed class Frame
{
    /// <summary>Makes a frame. The samples are not copied and must not change afterwards.</summary>
    /// <param name="seq">The device's counter, up by one a frame, from 0 when the device starts; it only finds gaps.</param>
    /// <param name="t0">Time of the first sample.</param>
    /// <param name="hz">Sampling rate, Hz.</param>
    /// <param name="samplesKg">Samples in kg, one array a cell in the order of <see cref="TwinPlate.Cells"/>, oldest first, all equally long.</param>
    public Frame(long seq, DateTimeOffset t0, double hz, float[][] samplesKg)
    {
        Seq = seq;
        T0 = t0;
        Hz = hz;
        SamplesKg = samplesKg;
    }

    /// <summary>The device's counter; it only finds gaps.</summary>
    public long Seq { get; }

    /// <summary>Time of the first sample. A frame is known by its platform and this.</summary>
    public DateTimeOffset T0 { get; }

    /// <summary>Sampling rate, Hz.</summary>
    public double Hz { get; }

    /// <summary>Samples in kg, one array a cell in the order of <see cref="TwinPlate.Cells"/>, oldest first.</summary>
    public float[][] SamplesKg { get; }

    /// <summary>Number of samples of each cell.</summary>
    public int Count => SamplesKg.Length == 0 ? 0 : SamplesKg[0].Length;

    /// <summary>When the sample after the last one would be taken.</summary>
    public DateTimeOffset End => T0 + TimeSpan.FromSeconds(Count / Hz);
}
