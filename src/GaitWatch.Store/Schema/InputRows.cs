namespace GaitWatch.Store;

// Rows of the log. Instants are Unix milliseconds, the resolution of the wire, so that both databases order and compare
// them as numbers. Seq is one counter over all tables: the order of arrival.

internal sealed class FrameRow
{
    public long Seq { get; set; }
    public required string Platform { get; set; }
    public long T0 { get; set; }
    public long End { get; set; }
    public long FrameSeq { get; set; }
    public double Hz { get; set; }
    public int Cells { get; set; }
    public required byte[] Samples { get; set; }
}

internal sealed class TagRow
{
    public long Seq { get; set; }
    public required string Platform { get; set; }
    public long At { get; set; }
    public long Eid { get; set; }
}

internal sealed class DevicePassageRow
{
    public long Seq { get; set; }
    public required string Platform { get; set; }
    public required string DeviceId { get; set; }
    public long? Eid { get; set; }
    public long StartedAt { get; set; }
    public long EndedAt { get; set; }
    public double Lf { get; set; }
    public double Rf { get; set; }
    public double Lh { get; set; }
    public double Rh { get; set; }
}

internal sealed class StatusRow
{
    public required string Platform { get; set; }
    public long Seq { get; set; }
    public bool Online { get; set; }
    public long? At { get; set; }
    public string? Firmware { get; set; }
    public long ReceivedAt { get; set; }
}

internal sealed class WriteRow
{
    public long Seq { get; set; }

    // SHA-256 of the content: the same write sent twice is one.
    public required string Digest { get; set; }
    public long At { get; set; }
    public required string Body { get; set; }
}

internal sealed class RejectedRow
{
    public long Seq { get; set; }
    public long ReceivedAt { get; set; }
    public required string Topic { get; set; }
    public required string Reason { get; set; }
    public required string Detail { get; set; }
    public required byte[] Payload { get; set; }
}

internal sealed class CounterRow
{
    public required string Name { get; set; }
    public long Value { get; set; }
}
