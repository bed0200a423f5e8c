using System.Collections.Immutable;

namespace GaitWatch.Store;

/// <summary>
/// A point of a series as it is sent: what names it (measurement, tags, time), which fields it has, and the whole as a line of
/// InfluxDB's line protocol.
/// </summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="At">Event time, Unix milliseconds.</param>
/// <param name="Tags">The tags, ordered by name.</param>
/// <param name="Fields">Names of the fields that have a value.</param>
/// <param name="Line">The point in line protocol, time in milliseconds.</param>
public sealed record SeriesPoint(string Measurement, long At, ImmutableArray<SeriesTag> Tags, ImmutableArray<string> Fields, string Line)
{
    /// <summary>What InfluxDB knows the point by: a second one with the same key takes its place.</summary>
    internal string Key() => $"{Measurement}\n{string.Join('\n', Tags.Select(tag => $"{tag.Name}={tag.Value}"))}\n{At}";

    /// <summary>What removes exactly this point.</summary>
    internal SeriesDeletion Deletion() => new(Measurement, Tags, At, At);
}

/// <summary>A tag: what series are told apart and grouped by.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Value">Its value; never empty.</param>
public readonly record struct SeriesTag(string Name, string Value);
