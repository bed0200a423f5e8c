using System.Collections.Immutable;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What the page about a passage tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Passage">The passage.</param>
/// <param name="Charts">The force under each leg; empty where no samples are kept.</param>
public sealed record PassageModel(PageContext Page, PassageView Passage, ImmutableArray<PassageChart> Charts)
{
    internal static async Task<PassageModel?> ReadAsync(BarnStore store, WebOptions options, string id, CancellationToken cancellation)
    {
        if (await store.Reader.PassageAsync(id, cancellation) is not { } passage)
            return null;
        var page = await PageContext.ReadAsync(store, "", "/cows", cancellation);
        var (curves, _) = await Curves.ReadAsync(store, options.Gait, id, cancellation);
        return new PassageModel(page with { Title = PassageTexts.Title(page.Times.DayAndTime(passage.StartedAt)) }, passage, curves is null ? [] : PassageChart.Of(curves));
    }
}
