using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Whether the store can be opened by this version.</summary>
internal static class StoreCheck
{
    private const string What = "store";

    /// <summary>Opens the store as the service would and closes it again. Where there is none, none is made.</summary>
    /// <param name="options">Where it is.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>What was found, and the start of the newest passage that lies in the clock's future.</returns>
    public static async Task<(CheckLine Line, DateTimeOffset? InFuture)> OfAsync(StoreOptions options, TimeProvider time, CancellationToken cancellation)
    {
        if (!Directory.Exists(options.DataDirectory) || !Directory.EnumerateFiles(options.DataDirectory).Any())
            return (CheckLine.Ok(What, $"None in {options.DataDirectory} yet; it is made at the first start."), null);
        try
        {
            await using var store = await BarnStore.OpenAsync(options, time, cancellation);
            var counts = await store.Reader.IngestAsync(cancellation);
            var late = await store.Reader.PassagesAsync(time.GetUtcNow().AddMinutes(5), null, null, null, Page.All, cancellation);
            return (CheckLine.Ok(What, $"The store in {options.DataDirectory} opens: {counts.Stored} inputs, {counts.Pending} not analysed yet."), late.Count > 0 ? late[^1].StartedAt : null);
        }
        catch (StoreUnavailableException e)
        {
            return (CheckLine.Fault(What, e.Message), null);
        }
    }
}
