namespace GaitWatch.Store;

/// <summary>The store of one farm: the log of inputs, the state folded from it, and the ways to read both.</summary>
public sealed class BarnStore : IAsyncDisposable
{
    /// <summary>Name of the embedded database in the data directory.</summary>
    public const string FileName = "gaitwatch.db";

    private readonly Writer _writer;
    private readonly DataDirectoryLock _lock;

    private BarnStore(StoreOptions options, DataDirectoryLock held, Writer writer, InputLog inputs, Progress progress, BarnReader reader, SeriesOutbox series)
    {
        Options = options;
        _lock = held;
        _writer = writer;
        Inputs = inputs;
        Progress = progress;
        Reader = reader;
        Series = series;
        Backfill = new SeriesBackfill(this, writer);
    }

    /// <summary>The options it was opened with.</summary>
    public StoreOptions Options { get; }

    /// <summary>The durable inbox.</summary>
    public InputLog Inputs { get; }

    /// <summary>How far the inbox has been folded.</summary>
    public Progress Progress { get; }

    /// <summary>Reads what people and programs ask for.</summary>
    public BarnReader Reader { get; }

    /// <summary>What waits to be sent to InfluxDB.</summary>
    public SeriesOutbox Series { get; }

    /// <summary>Brings what was kept before the export was set up.</summary>
    public SeriesBackfill Backfill { get; }

    /// <summary>
    /// Opens the store, makes it when missing, and brings an older one up to date. One process at a time holds it.
    /// </summary>
    /// <exception cref="StoreUnavailableException">Another process holds it, it is of a newer version, or the disk refuses.</exception>
    public static async Task<BarnStore> OpenAsync(StoreOptions options, TimeProvider time, CancellationToken cancellation = default)
    {
        var held = DataDirectoryLock.Take(options.DataDirectory);
        try
        {
            var file = Path.Combine(options.DataDirectory, FileName);
            var contexts = new BarnContextFactory(file);
            await contexts.MigrateAsync(cancellation);
            var connection = contexts.OpenForWriting();
            var writer = new Writer(connection);
            var progress = new Progress();
            await writer.BeginAsync(cancellation);
            long last, folded, unsent;
            long? keptFrom;
            try
            {
                last = One(writer, """SELECT "Value" FROM counters WHERE "Name" = 'last-seq'""") ?? 0;
                folded = One(writer, """SELECT "Value" FROM marks WHERE "Name" = 'folded'""") ?? 0;
                unsent = One(writer, """SELECT COALESCE(SUM(MAX("Points", 1)), 0) FROM outbox""") ?? 0;
                keptFrom = One(writer, """SELECT "Value" FROM marks WHERE "Name" = 'frames-kept-from'""");
            }
            finally
            {
                writer.End();
            }

            progress.ReportAppended(last);
            progress.ReportFolded(folded);
            progress.FramesKeptFrom = keptFrom.FromMs();
            var series = new SeriesOutbox(writer, contexts, options, time, unsent);
            return new BarnStore(
                options, held, writer, new InputLog(writer, progress, time, last, series), progress,
                new BarnReader(contexts, options, progress, new WriteBook(), time), series);
        }
        catch (Exception exception)
        {
            held.Dispose();
            throw StoreFaults.Translate(exception);
        }
    }

    /// <summary>
    /// Starts a change of the derived state. One at a time; inputs wait meanwhile. Dispose without
    /// <see cref="StateChange.CommitAsync"/> to take everything back.
    /// </summary>
    public async Task<StateChange> BeginAsync(CancellationToken cancellation = default)
    {
        await _writer.BeginAsync(cancellation);
        return new StateChange(_writer, Progress, Series);
    }

    /// <summary>Closes the store and lets another process have it.</summary>
    public async ValueTask DisposeAsync()
    {
        await _writer.DisposeAsync();
        _lock.Dispose();
    }

    private static long? One(Writer writer, string sql) => writer.Query(sql, row => row.GetInt64(0)) is [var value] ? value : null;
}
