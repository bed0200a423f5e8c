using System.Collections.Immutable;

namespace GaitWatch.Simulator;

/// <summary>A stretch of samples that a platform lost.</summary>
/// <param name="Start">Index of the first lost sample.</param>
/// <param name="Count">How many.</param>
public readonly record struct LostSamples(int Start, int Count);

/// <summary>A crossing as the platform's cells saw it, and what it really was.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Platform">The platform it crossed.</param>
/// <param name="Samples">Readings in kg: for each cell, in the platform's order, one figure a sample, over half a second of empty plate at both ends. What was lost is still here.</param>
/// <param name="Lost">Stretches whose frames never arrived; empty but for <see cref="CrossingKind.MissingFrames"/>.</param>
/// <param name="Truth">What really happened.</param>
public sealed record SimulatedCrossing(
    CrossingKind Kind, SimulatedPlatform Platform, float[][] Samples, ImmutableArray<LostSamples> Lost, CrossingTruth Truth)
{
    /// <summary>Sampling rate, Hz.</summary>
    public double Hz => Platform.Hz;

    /// <summary>Samples of each cell.</summary>
    public int SampleCount => Samples[0].Length;

    /// <summary>How long it lasted, empty plate included, s.</summary>
    public double DurationSeconds => SampleCount / Hz;

    /// <summary>
    /// The stretches in which the samples are sent: at most <paramref name="size"/> a frame, without those lost.
    /// A frame that touches a lost stretch is lost whole.
    /// </summary>
    /// <param name="size">Samples in a frame.</param>
    public IEnumerable<(int Start, int Count)> Frames(int size)
    {
        for (var start = 0; start < SampleCount; start += size)
        {
            var count = Math.Min(size, SampleCount - start);
            if (!Lost.Any(lost => lost.Start < start + count && lost.Start + lost.Count > start))
                yield return (start, count);
        }
    }
}
