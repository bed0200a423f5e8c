namespace GaitWatch.Store;

/// <summary>How the export to InfluxDB stands.</summary>
public sealed record SeriesView
{
    /// <summary>Whether an export is set up.</summary>
    public required bool IsSetUp { get; init; }

    /// <summary>Points and deletions that wait to be sent.</summary>
    public required long Pending { get; init; }

    /// <summary>Age of the oldest that waits, seconds.</summary>
    public required double LagSeconds { get; init; }

    /// <summary>Points and deletions that InfluxDB has taken since the service started.</summary>
    public required long Sent { get; init; }

    /// <summary>Those it refused for good since the service started.</summary>
    public required long Refused { get; init; }

    /// <summary>Refused points that are kept to be looked at.</summary>
    public required int RefusedKept { get; init; }

    /// <summary>When it last took something; null when it has not since the service started.</summary>
    public DateTimeOffset? LastSentAt { get; init; }

    /// <summary>Why the last try failed and what to do; null when it did not.</summary>
    public string? Fault { get; init; }

    /// <summary>The backfill last started; null when none was.</summary>
    public BackfillView? Backfill { get; init; }

    /// <summary>How the export of a store stands now.</summary>
    public static async Task<SeriesView> OfAsync(BarnStore store, CancellationToken cancellation = default)
    {
        var state = store.Series.State;
        var progress = await store.Backfill.ProgressAsync(cancellation);
        return new SeriesView
        {
            IsSetUp = store.Series.IsOn,
            Pending = store.Series.Pending,
            LagSeconds = Math.Round(store.Series.Lag.TotalSeconds, 1),
            Sent = state.Sent,
            Refused = state.Refused,
            RefusedKept = await store.Series.SetAsideCountAsync(cancellation),
            LastSentAt = state.LastSentAt,
            Fault = state.Fault,
            Backfill = progress is null ? null : new BackfillView(progress.Since, progress.Passages, progress.Of, !progress.IsUnderWay),
        };
    }
}

/// <summary>How far a backfill is.</summary>
/// <param name="Since">From when on.</param>
/// <param name="Passages">How many passages were brought to the outbox.</param>
/// <param name="Of">How many there were when it was started.</param>
/// <param name="IsComplete">Whether all were.</param>
public sealed record BackfillView(DateTimeOffset Since, long Passages, long Of, bool IsComplete);
