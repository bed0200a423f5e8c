namespace GaitWatch.Store;

/// <summary>The point in which the service tells of itself.</summary>
public static class ServicePoints
{
    /// <summary>Makes it.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="at">When the figures were read, by the clock.</param>
    /// <param name="figures">The figures.</param>
    public static SeriesPoint Of(string farm, DateTimeOffset at, ServiceFigures figures) => new PointBuilder("service", at.ToMs(), farm)
        .Field("received", figures.Received)
        .Field("stored", figures.Stored)
        .Field("rejected", figures.Rejected)
        .Field("duplicates", figures.Duplicates)
        .Field("pending_inputs", figures.PendingInputs)
        .Field("commit_seconds", figures.CommitSeconds)
        .Field("fold_seconds", figures.FoldSeconds)
        .Field("fold_failures", figures.FoldFailures)
        .Field("unsent_points", figures.UnsentPoints)
        .Field("unsent_seconds", figures.UnsentSeconds)
        .Field("refused_points", figures.RefusedPoints)
        .Field("memory_bytes", figures.MemoryBytes)
        .Build();
}

/// <summary>What the service tells of itself. Counts run from when the store was made, unless said otherwise.</summary>
public sealed record ServiceFigures
{
    /// <summary>Messages received.</summary>
    public required long Received { get; init; }

    /// <summary>Inputs that were new and are kept.</summary>
    public required long Stored { get; init; }

    /// <summary>Messages that could not be used.</summary>
    public required long Rejected { get; init; }

    /// <summary>Inputs that were there already.</summary>
    public required long Duplicates { get; init; }

    /// <summary>Inputs not analysed yet.</summary>
    public required long PendingInputs { get; init; }

    /// <summary>Mean time in which a batch became durable since the last figures, seconds; null when none did.</summary>
    public double? CommitSeconds { get; init; }

    /// <summary>Mean time of a change of the state since the last figures, seconds; null when there was none.</summary>
    public double? FoldSeconds { get; init; }

    /// <summary>Changes of the state that failed since the service started.</summary>
    public required long FoldFailures { get; init; }

    /// <summary>Points that wait to be sent.</summary>
    public required long UnsentPoints { get; init; }

    /// <summary>Age of the oldest of them, seconds.</summary>
    public required double UnsentSeconds { get; init; }

    /// <summary>Points that InfluxDB refused since the service started.</summary>
    public required long RefusedPoints { get; init; }

    /// <summary>Memory of the process, bytes.</summary>
    public required long MemoryBytes { get; init; }
}
