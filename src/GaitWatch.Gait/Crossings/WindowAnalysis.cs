using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>What the frames of one window held.</summary>
/// <remarks>
/// The answer for a crossing depends only on the frames from the empty stretch before it to the empty stretch after it, so
/// any two windows that hold both give the same crossing.
/// </remarks>
public sealed record WindowAnalysis
{
    /// <summary>The crossings that are over: the plates were empty again, or the frames broke off. In order of first contact.</summary>
    public ImmutableArray<Crossing> Crossings { get; init; } = [];

    /// <summary>
    /// True when the window begins under load. If earlier frames exist, the window must be widened back before its first
    /// crossing can be believed.
    /// </summary>
    public bool BeginsLoaded { get; init; }

    /// <summary>Since when a load has been standing that has not left by the window's end; null when the plates are empty there.</summary>
    public DateTimeOffset? LoadedSince { get; init; }

    /// <summary>The zero of every empty stretch, in order of time.</summary>
    public ImmutableArray<ZeroLevels> Zeros { get; init; } = [];
}
