namespace GaitWatch.Store;

/// <summary>How sending to InfluxDB has gone since the service started.</summary>
public sealed record SeriesState
{
    /// <summary>Points and deletions that InfluxDB has taken.</summary>
    public long Sent { get; init; }

    /// <summary>Points and deletions that it refused for good.</summary>
    public long Refused { get; init; }

    /// <summary>When it last took something; null when it has not.</summary>
    public DateTimeOffset? LastSentAt { get; init; }

    /// <summary>Tries that have failed in a row.</summary>
    public int Failures { get; init; }

    /// <summary>Why the last try failed and what to do; null when it did not.</summary>
    public string? Fault { get; init; }
}

/// <summary>A point that InfluxDB refused.</summary>
/// <param name="At">When it was refused.</param>
/// <param name="Reason">InfluxDB's reason.</param>
/// <param name="Body">The point in line protocol, or the deletion as JSON.</param>
public sealed record SetAsideView(DateTimeOffset At, string Reason, string Body);
