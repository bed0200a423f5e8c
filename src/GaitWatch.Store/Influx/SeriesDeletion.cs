using System.Collections.Immutable;

namespace GaitWatch.Store;

/// <summary>Points to be removed: those of a measurement that carry all these tags, within a span of time.</summary>
/// <param name="Measurement">The measurement.</param>
/// <param name="Tags">Tags that a point must have.</param>
/// <param name="From">Earliest time, Unix milliseconds.</param>
/// <param name="To">Latest time, Unix milliseconds.</param>
public sealed record SeriesDeletion(string Measurement, ImmutableArray<SeriesTag> Tags, long From, long To)
{
    /// <summary>Which points, in the predicate syntax of InfluxDB 2's delete route.</summary>
    public string Predicate() => string.Join(
        " AND ", Tags.Select(tag => $"{tag.Name}={Quoted(tag.Value)}").Prepend($"_measurement={Quoted(Measurement)}"));

    private static string Quoted(string value) =>
        $"\"{value.Replace("\\", "\\\\", StringComparison.Ordinal).Replace("\"", "\\\"", StringComparison.Ordinal)}\"";
}
