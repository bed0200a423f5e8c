using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What every page shows around its own content.</summary>
/// <param name="Title">The page's title.</param>
/// <param name="Here">The entry of the navigation it belongs to: such as <c>/</c> or <c>/cows</c>, or empty.</param>
/// <param name="Newest">The newest event: what the page's knowledge ends with.</param>
/// <param name="Calendar">The farm's days.</param>
public sealed record PageContext(string Title, string Here, DateTimeOffset Newest, FarmCalendar Calendar)
{
    internal FarmTimes Times { get; } = new(Calendar);

    internal DateOnly Today => Calendar.DayOf(Newest);

    internal static async Task<PageContext> ReadAsync(BarnStore store, string title, string here, CancellationToken cancellation) =>
        new(title, here, await store.Reader.NewestAsync(cancellation), store.Options.Calendar);
}
