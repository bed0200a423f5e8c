using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>Makes frames of samples.</summary>
internal static class Tape
{
    /// <summary>When every tape begins.</summary>
    public static DateTimeOffset Start { get; } = new(2026, 3, 2, 5, 14, 7, 250, TimeSpan.Zero);

    /// <summary>Empty samples of all cells.</summary>
    public static float[][] Blank(TwinPlate platform, double seconds, double hz) =>
        [.. platform.Cells.Select(_ => new float[(int)Math.Round(seconds * hz)])];

    /// <summary>Adds seeded noise and offsets.</summary>
    public static float[][] Noisy(this float[][] samples, int seed, double noiseKg = 0.5, double offsetKg = 10)
    {
        var random = new Random(seed);
        foreach (var cell in samples)
        {
            var offset = offsetKg * ((2 * random.NextDouble()) - 1);
            for (var i = 0; i < cell.Length; i++)
            {
                // Box and Muller.
                var normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
                cell[i] += (float)(offset + (noiseKg * normal));
            }
        }

        return samples;
    }

    /// <summary>Cuts samples into frames; times are rounded to the millisecond, as devices do.</summary>
    public static List<Frame> Frames(float[][] samples, double hz, int size = 50, long firstSeq = 0)
    {
        var frames = new List<Frame>();
        for (var start = 0; start < samples[0].Length; start += size)
        {
            var count = Math.Min(size, samples[0].Length - start);
            frames.Add(new Frame(firstSeq + (start / size), Start.AddMilliseconds(Math.Round(1000 * start / hz)), hz, [.. samples.Select(cell => cell[start..(start + count)])]));
        }

        return frames;
    }

    /// <summary>The frames of a simulated crossing, without those it lost.</summary>
    public static List<Frame> Frames(SimulatedCrossing crossing, int size = 50) =>
        [.. crossing.Frames(size).Select(range => new Frame(
            range.Start / size,
            Start.AddMilliseconds(Math.Round(1000 * range.Start / crossing.Hz)),
            crossing.Hz,
            [.. crossing.Samples.Select(cell => cell[range.Start..(range.Start + range.Count)])]))];

    /// <summary>The platform that a simulated one is.</summary>
    public static TwinPlate Platform(SimulatedPlatform platform) => new()
    {
        Id = platform.Id,
        PlateLengthMetres = platform.PlateLengthMetres,
        SampleRateHz = platform.Hz,
        Cells = [.. platform.Cells.Select(cell => new LoadCell(cell.Id, cell.IsLeft ? PlateSide.Left : PlateSide.Right, cell.X))],
    };

    /// <summary>Seconds from the beginning of the tape.</summary>
    public static double Seconds(this DateTimeOffset at) => (at - Start).TotalSeconds;

    /// <summary>Analyses samples on the default platform.</summary>
    public static WindowAnalysis Analyse(float[][] samples, double hz = 200) =>
        new CrossingAnalyser(TwinPlate.Default, new GaitOptions()).Analyse(Frames(samples, hz));

    /// <summary>A walk of one cow over the default platform, from empty to empty.</summary>
    public static float[][] Walk(HalfSineCow cow, double seconds = 6, double hz = 200)
    {
        var samples = Blank(TwinPlate.Default, seconds, hz);
        cow.Walk(TwinPlate.Default, hz, samples);
        return samples;
    }
}
