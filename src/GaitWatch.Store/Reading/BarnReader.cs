using GaitWatch.Herd;
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

    // The newest event is itself within what is asked for.
    private static DateTimeOffset JustAfter(DateTimeOffset instant) => instant.AddMilliseconds(1);
}
