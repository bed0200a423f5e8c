using System.Collections.Immutable;
using GaitWatch.Herd;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Cows.
public sealed partial class BarnReader
{
    /// <summary>The herd: registered cows and those known by their tag alone, in natural order of their numbers, as of now (the newest event).</summary>
    public async Task<IReadOnlyList<CowView>> CowsAsync(Page page, CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        var all = await OnceAsync<ImmutableArray<CowView>>(
            now, "cows", null,
            async _ =>
            {
                var seen = await LastSeenAsync(now, CancellationToken.None);
                return
                [
                    .. now.Register.Cows.Union(seen.Keys, StringComparer.Ordinal)
                        .Order(NaturalOrder.Comparer)
                        .Select(cow => View(now.Register, cow, now.Newest, seen.TryGetValue(cow, out var at) ? at.ToMs() : null)),
                ];
            },
            cancellation);
        return page.Skip == 0 && page.Size >= all.Length ? all : [.. all.Skip(page.Skip).Take(page.Size)];
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

    /// <summary>The number of the cow that is meant where a number or a tag was given; the text itself where neither is known.</summary>
    public async Task<string> CowMeantAsync(string named, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var register = await RegisterAsync(context, cancellation);
        return register.Meant(named, Known(register, named, JustAfter(await NewestAsync(context, cancellation))));
    }

    /// <summary>Cows of whose number or tag a text is a part, those whose number it is first, then in natural order.</summary>
    /// <param name="text">What was typed: a number, or some digits of a tag, as those printed on its face.</param>
    /// <param name="page">Which part of them.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<IReadOnlyList<CowView>> FindCowsAsync(string text, Page page, CancellationToken cancellation = default)
    {
        var typed = text.Trim();
        var digits = typed.Replace(" ", "", StringComparison.Ordinal);
        var found = (await CowsAsync(Page.All, cancellation)).Where(cow =>
            cow.Cow.Contains(typed, StringComparison.OrdinalIgnoreCase) || (digits.Length > 0 && cow.Eid?.Contains(digits, StringComparison.Ordinal) == true));
        return
        [
            .. found.OrderBy(cow => cow.Cow.Equals(typed, StringComparison.OrdinalIgnoreCase) ? 0 : cow.Eid == digits ? 1 : cow.Eid?.EndsWith(digits, StringComparison.Ordinal) == true ? 2 : 3)
                .Skip(page.Skip).Take(page.Size),
        ];
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
