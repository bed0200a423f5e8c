using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

/// <summary>Reads the state as the walls of the service show it. Every list is in the order its route promises.</summary>
/// <remarks>Safe to use from several threads; readers never wait for the writer.</remarks>
public sealed partial class BarnReader
{
    private readonly IDbContextFactory<BarnContext> _contexts;
    private readonly StoreOptions _options;
    private readonly Progress _progress;
    private readonly WriteBook _book;
    private readonly TimeProvider _time;
    private readonly StateMemo _memo = new();
    private readonly BodyCache<Alert> _alertBodies = new(StoreJson.Read<Alert>);
    private readonly BodyCache<RecoveryAssessment> _recoveryBodies = new(StoreJson.Read<RecoveryAssessment>);

    internal BarnReader(IDbContextFactory<BarnContext> contexts, StoreOptions options, Progress progress, WriteBook book, TimeProvider time)
    {
        _contexts = contexts;
        _options = options;
        _progress = progress;
        _book = book;
        _time = time;
    }

    /// <summary>The farm's day of the newest event: the default of every date; the clock's day when nothing has come yet.</summary>
    public async Task<DateOnly> NewestDayAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return _options.Calendar.DayOf(await NewestAsync(context, cancellation));
    }

    /// <summary>The instant of the newest event: the end of the last passage; the clock's when nothing has come yet.</summary>
    public async Task<DateTimeOffset> NewestAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return await NewestAsync(context, cancellation);
    }

    /// <summary>When the first animal crossed; null while none has.</summary>
    public async Task<DateTimeOffset?> OldestAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return (await context.Passages.MinAsync(row => (long?)row.StartedAt, cancellation)).FromMs();
    }

    /// <summary>The whole register.</summary>
    public async Task<HerdRegister> RegisterAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return await RegisterAsync(context, cancellation);
    }

    private async Task<DateTimeOffset> NewestAsync(BarnContext context, CancellationToken cancellation) =>
        (await context.Passages.MaxAsync(row => (long?)row.EndedAt, cancellation)).FromMs() ?? _time.GetUtcNow();

    private async Task<HerdRegister> RegisterAsync(BarnContext context, CancellationToken cancellation) =>
        (await BookAsync(context, cancellation)).Register;

    private async Task<Book> BookAsync(BarnContext context, CancellationToken cancellation)
    {
        var last = _book.Last;
        var newer = await context.Writes.Where(row => row.Seq > last).OrderBy(row => row.Seq).Select(row => new { row.Seq, row.Body }).ToListAsync(cancellation);
        return _book.Add([.. newer.Select(row => (row.Seq, row.Body))]);
    }

    /// <summary>What follows from the state as it stands, worked out once for every reader until it changes. What is read is for reading only.</summary>
    private Task<T> OnceAsync<T>(Now now, string what, object? of, Func<BarnContext, Task<T>> read, CancellationToken cancellation) => _memo.OfAsync(
        now.Mark, what, of,
        async () =>
        {
            await using var context = _contexts.CreateDbContext();
            // Kept open over its queries: opening costs as much as a small one.
            await context.Database.OpenConnectionAsync(CancellationToken.None);
            return await read(context);
        },
        cancellation);

    private async Task<Now> NowAsync(CancellationToken cancellation)
    {
        await using var context = _contexts.CreateDbContext();
        return await NowAsync(context, cancellation);
    }

    // One glance: where the state stands, told by the store itself, for another process may have changed it.
    private async Task<Now> NowAsync(BarnContext context, CancellationToken cancellation)
    {
        await context.Database.OpenConnectionAsync(cancellation);
        long changes, written;
        DateTimeOffset? crossed;
        using (var query = new PreparedCommand(context.Database.GetDbConnection(), Glance, 1))
        using (var row = query.Query(StateChange.ChangesMark))
        {
            await row.ReadAsync(cancellation);
            changes = row.IsDBNull(0) ? 0 : row.GetInt64(0);
            written = row.IsDBNull(1) ? 0 : row.GetInt64(1);
            crossed = (row.IsDBNull(2) ? (long?)null : row.GetInt64(2)).FromMs();
        }

        var book = written > _book.Last ? await BookAsync(context, cancellation) : _book.Add([]);
        var newest = crossed ?? _time.GetUtcNow();
        return new Now(
            book, newest, book.NewestAt is { } entered && entered > newest ? entered : newest, new StateMark(changes, book.Writes.Length, newest));
    }

    private const string Glance =
        """SELECT (SELECT "Value" FROM marks WHERE "Name" = @0), (SELECT MAX("Seq") FROM writes), (SELECT MAX("EndedAt") FROM passages)""";

    /// <summary>Where event time stands.</summary>
    /// <param name="Book">What people entered.</param>
    /// <param name="Newest">The newest crossing.</param>
    /// <param name="AsOf">The newest of crossings and of what people entered.</param>
    /// <param name="Mark">Tells this state from another.</param>
    private sealed record Now(Book Book, DateTimeOffset Newest, DateTimeOffset AsOf, StateMark Mark)
    {
        public ImmutableArray<FarmWrite> Writes => Book.Writes;

        public HerdRegister Register => Book.Register;

        public FindingLog Findings => Book.Findings;
    }

    // The newest event is itself within what is asked for.
    private static DateTimeOffset JustAfter(DateTimeOffset instant) => instant.AddMilliseconds(1);
}
