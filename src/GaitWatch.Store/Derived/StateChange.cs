namespace GaitWatch.Store;

/// <summary>
/// One change of the derived state, whole or not at all: reads inputs and state as they stand and writes what follows from
/// them, together with how far the log has been folded.
/// </summary>
/// <remarks>Not safe for use by several threads at once.</remarks>
public sealed partial class StateChange : IAsyncDisposable
{
    /// <summary>Counts the changes, so that readers tell one state from another.</summary>
    internal const string ChangesMark = "changes";

    private readonly Writer _writer;
    private readonly Progress _progress;
    private DateTimeOffset? _prunedBefore;

    internal StateChange(Writer writer, Progress progress, SeriesOutbox series)
    {
        _writer = writer;
        _progress = progress;
        _series = series;
        _outbox = series.IsOn ? series.Writing() : null;
    }

    /// <summary>Up to which sequence number the state shows.</summary>
    public Task<long> FoldedAsync() => Task.FromResult(Mark("folded") ?? 0);

    /// <summary>Makes everything of this change visible at once, and the log folded up to a sequence number.</summary>
    /// <exception cref="StoreUnavailableException">Nothing of the change is durable.</exception>
    public Task CommitAsync(long folded)
    {
        if (_outbox is not null)
            SettleSeries(folded);
        SetMark("folded", folded);
        SetMark(ChangesMark, (Mark(ChangesMark) ?? 0) + 1);
        _writer.Commit();
        _series.Written(_outbox);
        if (_prunedBefore is { } before)
            _progress.FramesKeptFrom = before;
        _progress.ReportFolded(folded);
        return Task.CompletedTask;
    }

    /// <summary>Takes back what was not committed and lets inputs in again.</summary>
    public ValueTask DisposeAsync()
    {
        _writer.End();
        return ValueTask.CompletedTask;
    }

    private long? Mark(string name) =>
        _writer.Query("""SELECT "Value" FROM marks WHERE "Name" = @0""", row => row.GetInt64(0), name) is [var value] ? value : null;

    private void SetMark(string name, long value) => _writer.Execute(
        """INSERT INTO marks("Name", "Value") VALUES (@0, @1) ON CONFLICT("Name") DO UPDATE SET "Value" = excluded."Value" """, name, value);
}
