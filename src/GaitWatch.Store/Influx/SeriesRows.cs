namespace GaitWatch.Store;

// Rows of the way to InfluxDB.

internal sealed class OutboxRow
{
    public long Seq { get; set; }

    // When it was written here, by the clock: how far InfluxDB lags behind.
    public long WrittenAt { get; set; }

    // 0 for a deletion.
    public int Points { get; set; }

    // Lines of line protocol, or a deletion as JSON.
    public required string Body { get; set; }
}

internal sealed class SetAsideRow
{
    public required string Body { get; set; }
    public long At { get; set; }
    public required string Reason { get; set; }
}

internal sealed class SeriesImageRow
{
    public required string Entity { get; set; }

    // The points last written of it, as JSON.
    public required string Points { get; set; }
}
