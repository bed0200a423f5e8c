using System.Collections.Immutable;

namespace GaitWatch.Store;

/// <summary>A record of the outbox: points to write, or a deletion.</summary>
/// <param name="Seq">Its place in the order.</param>
/// <param name="Lines">Points in line protocol; none when it is a deletion.</param>
/// <param name="Deletion">What to delete; null when there are points.</param>
internal sealed record OutboxRecord(long Seq, ImmutableArray<string> Lines, SeriesDeletion? Deletion)
{
    /// <summary>How many points, a deletion counting as one.</summary>
    public int Count => Deletion is null ? Lines.Length : 1;

    public static OutboxRecord Of(OutboxRow row) => row.Points == 0
        ? new OutboxRecord(row.Seq, [], StoreJson.Read<SeriesDeletion>(row.Body))
        : new OutboxRecord(row.Seq, [.. row.Body.Split('\n')], null);
}
