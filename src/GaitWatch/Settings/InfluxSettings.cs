namespace GaitWatch;

/// <summary>Where the series go.</summary>
internal sealed record InfluxSettings
{
    /// <summary>Address of InfluxDB 2.</summary>
    public required Uri Url { get; init; }

    /// <summary>A token that may write to the bucket and delete from it.</summary>
    public required string Token { get; init; }

    /// <summary>The organization.</summary>
    public required string Org { get; init; }

    /// <summary>The bucket.</summary>
    public required string Bucket { get; init; }
}
