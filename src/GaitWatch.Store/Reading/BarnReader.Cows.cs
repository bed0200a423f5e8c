using GaitWatch.Herd;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Cows.
public sealed partial class BarnReader
{
    /// <summary>The herd: registered cows and those known by their tag alone, in natural order of their numbers, as of now (the newest event).</summary>
    public async Task<IReadOnlyList<CowView>> CowsAsync(Page page, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var register = await RegisterAsync(context, cancellation);
        var now = await NewestAsync(context, cancellation);
        var seen = await context.CowsSeen.ToDictionaryAsync(row => row.Cow, row => row.LastSeenAt, StringComparer.Ordinal, cancellation);
        return
        [
            .. register.Cows.Union(seen.Keys, StringComparer.Ordinal)
                .Order(NaturalOrder.Comparer)
                .Skip(page.Skip).Take(page.Size)
                .Select(cow => View(register, cow, now, seen.TryGetValue(cow, out var at) ? at : null)),
        ];
    }

    /// <summary>One cow; null when neither registered nor seen.</summary>
    public async Task<CowView?> CowAsync(string cow, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var register = await RegisterAsync(context, cancellation);
        var seen = await context.CowsSeen.FirstOrDefaultAsync(row => row.Cow == cow, cancellation);
        return seen is null && register.HistoryOf(cow).IsEmpty
            ? null
            : View(register, cow, await NewestAsync(context, cancellation), seen?.LastSeenAt);
    }

    private static CowView View(HerdRegister register, string cow, DateTimeOffset now, long? lastSeenAt) =>
        register.At(cow, Known(register, cow, JustAfter(now))) is { } known
            ? new CowView(cow, known.Eid?.ToString(), known.Pen, known.Parity, known.CalvedOn, known.DriedOffOn, known.DueOn, known.LeftOn, lastSeenAt.FromMs())
            // Known by her tag alone: the tag is her name.
            : new CowView(cow, cow, null, null, null, null, null, null, lastSeenAt.FromMs());

    // What was entered since the last crossing is known already: who has just moved a cow to another pen sees her there.
    private static DateTimeOffset Known(HerdRegister register, string cow, DateTimeOffset now) =>
        register.HistoryOf(cow).Select(said => said.EnteredAt).Append(now).Max();
}
