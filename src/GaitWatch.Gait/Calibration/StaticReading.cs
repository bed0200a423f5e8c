using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>What the cells read while nothing moved on the platform. The zero offset is not removed.</summary>
public sealed record StaticReading
{
    /// <summary>A cell that a resting load is on may wander so much between the two halves of a reading, kg, beyond its noise.</summary>
    private const double MostWanderKg = 0.5;

    /// <summary>Spread of a cell under a resting load, kg: three times that of a noisy cell.</summary>
    private const double MostSpreadKg = 2.5;

    /// <summary>When the first sample was taken.</summary>
    public required DateTimeOffset From { get; init; }

    /// <summary>When the last sample was taken.</summary>
    public required DateTimeOffset To { get; init; }

    /// <summary>How many samples of each cell it rests on.</summary>
    public required int Samples { get; init; }

    /// <summary>Mean of each cell, kg, in the order of <see cref="TwinPlate.Cells"/>.</summary>
    public required ImmutableArray<double> Kg { get; init; }

    /// <summary>Standard deviation of each cell's samples, kg.</summary>
    public required ImmutableArray<double> SpreadKg { get; init; }

    /// <summary>Whether nothing moved meanwhile.</summary>
    public required bool IsSteady { get; init; }

    /// <summary>Reads the end of a recording.</summary>
    /// <param name="platform">The platform.</param>
    /// <param name="frames">Its newest frames, in order of <see cref="Frame.T0"/>.</param>
    /// <param name="over">How much of the end is averaged; less where the recording without a gap is shorter.</param>
    /// <returns>Null when no frame can be read.</returns>
    public static StaticReading? Of(TwinPlate platform, IReadOnlyList<Frame> frames, TimeSpan over)
    {
        if (FrameAssembly.Assemble(frames, platform.Cells.Length) is not [.., var stretch])
            return null;
        var count = Math.Min(stretch.Count, Math.Max(1, (int)Math.Round(over.TotalSeconds * stretch.Hz)));
        var start = stretch.Count - count;
        var means = ImmutableArray.CreateBuilder<double>(stretch.SamplesKg.Length);
        var spreads = ImmutableArray.CreateBuilder<double>(stretch.SamplesKg.Length);
        var steady = true;
        foreach (var cell in stretch.SamplesKg)
        {
            var samples = cell.AsSpan(start, count);
            var (mean, spread) = MeanAndSpread(samples);
            var wander = count < 4 ? 0 : Math.Abs(MeanAndSpread(samples[..(count / 2)]).Mean - MeanAndSpread(samples[(count / 2)..]).Mean);
            steady &= spread <= MostSpreadKg && wander <= MostWanderKg + (3 * spread * 2 / Math.Sqrt(count));
            means.Add(mean);
            spreads.Add(spread);
        }

        return new StaticReading
        {
            From = stretch.TimeAt(start),
            To = stretch.TimeAt(stretch.Count - 1),
            Samples = count,
            Kg = means.MoveToImmutable(),
            SpreadKg = spreads.MoveToImmutable(),
            IsSteady = steady,
        };
    }

    private static (double Mean, double Spread) MeanAndSpread(ReadOnlySpan<float> samples)
    {
        double sum = 0, squares = 0;
        foreach (var kg in samples)
            sum += kg;
        var mean = sum / samples.Length;
        foreach (var kg in samples)
            squares += (kg - mean) * (kg - mean);
        return (mean, samples.Length < 2 ? 0 : Math.Sqrt(squares / (samples.Length - 1)));
    }
}
