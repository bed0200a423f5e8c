using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>What came in between two sequence numbers.</summary>
public sealed record InputBatch
{
    /// <summary>The newest sequence number of the batch; equal to the one asked after when nothing came.</summary>
    public required long LastSeq { get; init; }

    /// <summary>Where frames came: one span a platform and run of frames, read again from the store when analysed.</summary>
    public ImmutableArray<InputSpan> Frames { get; init; } = [];

    /// <summary>Where tags came.</summary>
    public ImmutableArray<InputSpan> Tags { get; init; } = [];

    /// <summary>Passages that devices summed up.</summary>
    public ImmutableArray<(string Platform, DevicePassage Passage)> Passages { get; init; } = [];

    /// <summary>What people entered.</summary>
    public ImmutableArray<FarmWrite> Writes { get; init; } = [];
}

/// <summary>A span of event time on one platform in which something came in.</summary>
/// <param name="Platform">The platform.</param>
/// <param name="From">Time of the earliest.</param>
/// <param name="To">End of the latest.</param>
public readonly record struct InputSpan(string Platform, DateTimeOffset From, DateTimeOffset To);
