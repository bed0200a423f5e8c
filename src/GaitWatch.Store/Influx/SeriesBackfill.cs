using System.Globalization;

namespace GaitWatch.Store;

/// <summary>
/// Tells InfluxDB what was kept before the export was set up, or all of it anew: removes what it shows from an instant on, then
/// brings that again from the state, slice by slice, durably, so that a restart goes on where it stopped.
/// </summary>
/// <remarks>Safe to use from several threads.</remarks>
public sealed class SeriesBackfill
{
    // So many points may wait before the next slice: the outbox stays small on the disk.
    private const int MostWaiting = 60_000;

    private const string SinceMark = "series-since";
    private const string AtMark = "series-at";
    private const string DoneMark = "series-done";
    private const string TotalMark = "series-total";

    private const long Never = long.MinValue;

    // What is made from the state, and so can be made again.
    private static readonly string[] s_fromState = ["passage", "leg", "balance", "alert", "finding", "recovery", "recovery_day", "platform_zero"];

    // Known to be at its end: the store need not be asked.
    private volatile bool _isAtEnd;
    private readonly BarnStore _store;
    private readonly Writer _writer;

    internal SeriesBackfill(BarnStore store, Writer writer)
    {
        _store = store;
        _writer = writer;
    }

    /// <summary>Starts, or starts again from another instant.</summary>
    /// <param name="since">From when on; null for everything.</param>
    /// <param name="cancellation">Gives up waiting for the turn.</param>
    /// <exception cref="InvalidOperationException">No export is set up.</exception>
    /// <exception cref="StoreUnavailableException">Nothing was started.</exception>
    public async Task StartAsync(DateTimeOffset? since, CancellationToken cancellation = default)
    {
        if (!_store.Series.IsOn)
            throw new InvalidOperationException("No export is set up: GaitWatch:Influx:Url is not set.");
        var from = since?.ToMs() ?? 0;
        await using var change = await _store.BeginAsync(cancellation);
        var total = _writer.Query("""SELECT COUNT(*) FROM passages WHERE "StartedAt" >= @0""", row => row.GetInt64(0), from)[0];
        foreach (var measurement in s_fromState)
            change.WriteDeletion(new SeriesDeletion(measurement, [new SeriesTag("farm", _store.Series.Farm)], from, new DateTimeOffset(2200, 1, 1, 0, 0, 0, TimeSpan.Zero).ToMs()));
        change.ForgetImages();
        await change.WriteAllEntitiesAsync();
        change.WriteMark(SinceMark, from);
        change.WriteMark(AtMark, from - 1);
        change.WriteMark(DoneMark, 0);
        change.WriteMark(TotalMark, total);
        await change.CommitAsync(await change.FoldedAsync());
        _isAtEnd = false;
    }

    /// <summary>Brings the next slice, unless much waits to be sent.</summary>
    /// <returns>Whether a slice was brought.</returns>
    /// <exception cref="StoreUnavailableException">Nothing was brought.</exception>
    internal async Task<bool> StepAsync(CancellationToken cancellation)
    {
        if (_isAtEnd || _store.Series.Pending > MostWaiting)
            return false;
        await using var change = await _store.BeginAsync(cancellation);
        if (change.ReadMark(AtMark) is not { } at || at == Never)
        {
            _isAtEnd = true;
            return false;
        }

        if (change.WritePassagesAfter(at) is { } slice)
        {
            change.WriteZerosBetween(at, slice.Until);
            change.WriteMark(AtMark, slice.Until);
            change.WriteMark(DoneMark, (change.ReadMark(DoneMark) ?? 0) + slice.Passages);
        }
        else
        {
            change.WriteZerosBetween(at, long.MaxValue);
            change.WriteMark(AtMark, Never);
        }

        await change.CommitAsync(await change.FoldedAsync());
        return true;
    }

    /// <summary>How far it is; null when none was ever started.</summary>
    public async Task<BackfillProgress?> ProgressAsync(CancellationToken cancellation = default)
    {
        await using var change = await _store.BeginAsync(cancellation);
        return change.ReadMark(SinceMark) is { } since
            ? new BackfillProgress(since.FromMs(), change.ReadMark(DoneMark) ?? 0, change.ReadMark(TotalMark) ?? 0, change.ReadMark(AtMark) is { } at && at != Never)
            : null;
    }
}

/// <summary>How far a backfill is.</summary>
/// <param name="Since">From when on.</param>
/// <param name="Passages">How many passages were brought to the outbox.</param>
/// <param name="Of">How many there are.</param>
/// <param name="IsUnderWay">Whether there is more to bring.</param>
public sealed record BackfillProgress(DateTimeOffset Since, long Passages, long Of, bool IsUnderWay)
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Passages} of {Of} passages since {Since:yyyy-MM-dd}");
}
