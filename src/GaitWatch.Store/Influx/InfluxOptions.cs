namespace GaitWatch.Store;

/// <summary>Where the series go.</summary>
public sealed record InfluxOptions
{
    /// <summary>Address of InfluxDB 2, such as <c>http://127.0.0.1:8086</c>.</summary>
    public required Uri Url { get; init; }

    /// <summary>A token that may write to the bucket and delete from it.</summary>
    public required string Token { get; init; }

    /// <summary>The organization.</summary>
    public required string Org { get; init; }

    /// <summary>The bucket.</summary>
    public required string Bucket { get; init; }

    /// <summary>How many points are sent together. Default 5,000, what InfluxDB recommends.</summary>
    public int PointsPerWrite { get; init; } = 5000;
}
