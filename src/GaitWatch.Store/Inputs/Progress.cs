namespace GaitWatch.Store;

/// <summary>
/// Where the log stands and how far it has been folded into the state: what the writer of an input, the analysis and the
/// pages meet in.
/// </summary>
/// <remarks>Safe to use from several threads. Holds for this process; a second one sees only the store itself.</remarks>
public sealed class Progress
{
    private readonly Lock _gate = new();
    private TaskCompletionSource _changed = New();
    private long _appended;
    private long _folded;
    private DateTimeOffset? _framesKeptFrom;

    /// <summary>The newest sequence number in the log.</summary>
    public long Appended
    {
        get
        {
            lock (_gate)
                return _appended;
        }
    }

    /// <summary>Up to which sequence number the state shows.</summary>
    public long Folded
    {
        get
        {
            lock (_gate)
                return _folded;
        }
    }

    /// <summary>Frames and tags from before this are gone and late ones are refused; null while none were removed.</summary>
    public DateTimeOffset? FramesKeptFrom
    {
        get
        {
            lock (_gate)
                return _framesKeptFrom;
        }

        internal set
        {
            lock (_gate)
                _framesKeptFrom = value;
        }
    }

    /// <summary>Waits until the state shows everything up to a sequence number.</summary>
    public Task UntilFoldedAsync(long seq, CancellationToken cancellation = default) => UntilAsync(() => _folded >= seq, cancellation);

    /// <summary>Waits until the log holds something beyond a sequence number.</summary>
    public Task UntilAppendedAsync(long beyond, CancellationToken cancellation = default) => UntilAsync(() => _appended > beyond, cancellation);

    internal void ReportAppended(long seq) => Report(ref _appended, seq);

    internal void ReportFolded(long seq) => Report(ref _folded, seq);

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private void Report(ref long place, long seq)
    {
        TaskCompletionSource changed;
        lock (_gate)
        {
            if (seq <= place)
                return;
            place = seq;
            changed = _changed;
            _changed = New();
        }

        changed.SetResult();
    }

    private async Task UntilAsync(Func<bool> reached, CancellationToken cancellation)
    {
        while (true)
        {
            Task next;
            lock (_gate)
            {
                if (reached())
                    return;
                next = _changed.Task;
            }

            await next.WaitAsync(cancellation);
        }
    }
}
