using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What the page about platforms tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Platforms">The platforms.</param>
/// <param name="Ingest">What came in.</param>
/// <param name="Rejected">The newest messages that could not be used.</param>
public sealed record PlatformsModel(PageContext Page, IReadOnlyList<PlatformView> Platforms, IngestView Ingest, IReadOnlyList<RejectedView> Rejected)
{
    private const int RejectedShown = 20;

    internal static async Task<PlatformsModel> ReadAsync(BarnStore store, CancellationToken cancellation) => new(
        await PageContext.ReadAsync(store, PlatformTexts.Title, "/platforms", cancellation),
        await store.Reader.PlatformsAsync(cancellation),
        await store.Reader.IngestAsync(cancellation),
        await store.Reader.RejectedAsync(null, null, new Page(1, RejectedShown), cancellation));
}
