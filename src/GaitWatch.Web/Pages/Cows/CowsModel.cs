using System.Collections.Immutable;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What the list of cows tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Search">What was searched for; empty for all.</param>
/// <param name="Rows">The cows of this part, each with her worst flag.</param>
/// <param name="All">How many fit in all.</param>
/// <param name="Number">Which part, from 1.</param>
public sealed record CowsModel(PageContext Page, string Search, ImmutableArray<(CowView Cow, AlertView? Flag)> Rows, int All, int Number)
{
    /// <summary>Cows a part.</summary>
    public const int Size = 100;

    internal bool More => Number * Size < All;

    internal static async Task<CowsModel> ReadAsync(BarnStore store, string? search, int number, CancellationToken cancellation)
    {
        var page = await PageContext.ReadAsync(store, CowTexts.ListTitle, "/cows", cancellation);
        var wanted = (search ?? "").Trim();
        var flags = (await store.Reader.FlagsAsync(page.Today, cancellation)).DistinctBy(flag => flag.Cow).ToDictionary(flag => flag.Cow, StringComparer.Ordinal);
        var cows = (await store.Reader.CowsAsync(Store.Page.All, cancellation)).Where(cow => Fits(cow, wanted)).ToArray();
        var rows = cows.Skip((number - 1) * Size).Take(Size).Select(cow => (cow, flags.GetValueOrDefault(cow.Cow)));
        return new CowsModel(page, wanted, [.. rows], cows.Length, number);
    }

    // By the beginning of her number, the end of her tag (what is printed large on it), or her pen.
    private static bool Fits(CowView cow, string wanted) =>
        wanted.Length == 0
        || cow.Cow.StartsWith(wanted, StringComparison.OrdinalIgnoreCase)
        || cow.Eid?.EndsWith(wanted, StringComparison.Ordinal) == true
        || (cow.Pen is { } pen && (pen.Equals(wanted, StringComparison.OrdinalIgnoreCase) || wanted.Equals($"pen {pen}", StringComparison.OrdinalIgnoreCase)));
}
