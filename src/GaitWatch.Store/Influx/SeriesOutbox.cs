using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

/// <summary>
/// What waits to be sent to InfluxDB. Points come in with the change of the state they tell of, in one transaction, and leave
/// once InfluxDB has them: nothing is lost while it is away, and what is sent twice shows once.
/// </summary>
/// <remarks>Safe to use from several threads; one sender a store.</remarks>
public sealed class SeriesOutbox
{
    // Of points that InfluxDB refuses the newest are kept to be looked at; each can be made again from the state.
    private const int MostSetAside = 10_000;

    private readonly Writer _writer;
    private readonly IDbContextFactory<BarnContext> _contexts;
    private readonly TimeProvider _time;
    private readonly Lock _gate = new();
    private TaskCompletionSource _arrived = New();
    private long _pending;
    private DateTimeOffset? _oldest;
    private SeriesState _state = new();

    internal SeriesOutbox(Writer writer, IDbContextFactory<BarnContext> contexts, StoreOptions options, TimeProvider time, long pending)
    {
        _writer = writer;
        _contexts = contexts;
        Options = options;
        _time = time;
        _pending = pending;
    }

    /// <summary>Whether points are put in.</summary>
    public bool IsOn => Options.ExportSeries;

    /// <summary>How many points and deletions wait.</summary>
    public long Pending => Interlocked.Read(ref _pending);

    /// <summary>How old the oldest waiting point is; zero when none waits.</summary>
    public TimeSpan Lag
    {
        get
        {
            lock (_gate)
                return Pending > 0 && _oldest is { } oldest && _time.GetUtcNow() - oldest is var age && age > TimeSpan.Zero ? age : TimeSpan.Zero;
        }
    }

    /// <summary>How sending has gone of late.</summary>
    public SeriesState State
    {
        get
        {
            lock (_gate)
                return _state;
        }

        internal set
        {
            lock (_gate)
                _state = value;
        }
    }

    internal StoreOptions Options { get; }

    internal string Farm => Options.Farm;

    /// <summary>Puts points in that tell of nothing in the state, such as the service's own figures.</summary>
    /// <param name="points">The points; at most a few hundred.</param>
    /// <param name="cancellation">Gives up waiting for the turn.</param>
    /// <exception cref="StoreUnavailableException">Nothing was put in.</exception>
    public async Task AppendAsync(IReadOnlyCollection<SeriesPoint> points, CancellationToken cancellation = default)
    {
        if (!IsOn || points.Count == 0)
            return;
        await _writer.BeginAsync(cancellation);
        try
        {
            var writing = Writing();
            writing.Add(points);
            _writer.Commit();
            Written(writing);
        }
        finally
        {
            _writer.End();
        }
    }

    /// <summary>The next records in order: at least one when any waits, and no more than so many points, one record apart.</summary>
    internal async Task<IReadOnlyList<OutboxRecord>> ReadAsync(int points, CancellationToken cancellation)
    {
        await using var context = _contexts.CreateDbContext();
        var records = new List<OutboxRecord>();
        var total = 0;
        await foreach (var row in context.Outbox.OrderBy(row => row.Seq).Take(points).AsAsyncEnumerable().WithCancellation(cancellation))
        {
            if (records.Count == 0)
            {
                lock (_gate)
                    _oldest = row.WrittenAt.FromMs();
            }

            var record = OutboxRecord.Of(row);
            if (records.Count > 0 && total + record.Count > points)
                break;
            records.Add(record);
            total += record.Count;
        }

        return records;
    }

    /// <summary>InfluxDB has everything up to a record.</summary>
    internal async Task AcknowledgeAsync(long upTo, int count, CancellationToken cancellation)
    {
        await _writer.BeginAsync(cancellation);
        try
        {
            _writer.Execute("""DELETE FROM outbox WHERE "Seq" <= @0""", upTo);
            _writer.Commit();
        }
        finally
        {
            _writer.End();
        }

        Interlocked.Add(ref _pending, -count);
    }

    /// <summary>Keeps what InfluxDB refuses, with its reason.</summary>
    internal async Task SetAsideAsync(string body, string reason, CancellationToken cancellation)
    {
        await _writer.BeginAsync(cancellation);
        try
        {
            _writer.Execute(
                """INSERT OR REPLACE INTO outbox_set_aside("Body", "At", "Reason") VALUES (@0, @1, @2)""", body, _time.GetUtcNow().ToMs(), reason);
            _writer.Execute(
                $"""DELETE FROM outbox_set_aside WHERE "Body" IN (SELECT "Body" FROM outbox_set_aside ORDER BY "At" DESC LIMIT -1 OFFSET {MostSetAside})""");
            _writer.Commit();
        }
        finally
        {
            _writer.End();
        }
    }

    /// <summary>Points that InfluxDB refused, newest first.</summary>
    public async Task<IReadOnlyList<SetAsideView>> SetAsideAsync(Page page, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var rows = await context.SetAside.OrderByDescending(row => row.At).ThenBy(row => row.Body).Skip(page.Skip).Take(page.Size).ToListAsync(cancellation);
        return [.. rows.Select(row => new SetAsideView(row.At.FromMs(), row.Reason, row.Body))];
    }

    /// <summary>How many points InfluxDB refused are kept.</summary>
    public async Task<int> SetAsideCountAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return await context.SetAside.CountAsync(cancellation);
    }

    /// <summary>Waits until something waits to be sent.</summary>
    internal async Task UntilPendingAsync(CancellationToken cancellation)
    {
        while (true)
        {
            Task next;
            lock (_gate)
            {
                if (Pending > 0)
                    return;
                next = _arrived.Task;
            }

            await next.WaitAsync(cancellation);
        }
    }

    internal OutboxWriter Writing() => new(_writer, _time);

    /// <summary>What was put in is durable.</summary>
    internal void Written(OutboxWriter? writing)
    {
        if (writing is not { Added: > 0 })
            return;
        TaskCompletionSource arrived;
        lock (_gate)
        {
            if (Pending == 0)
                _oldest = _time.GetUtcNow();
            Interlocked.Add(ref _pending, writing.Added);
            arrived = _arrived;
            _arrived = New();
        }

        arrived.SetResult();
    }

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);
}
