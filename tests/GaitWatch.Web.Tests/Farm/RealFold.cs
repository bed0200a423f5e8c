using GaitWatch.Barn;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.Extensions.Logging.Abstractions;

namespace GaitWatch.Web.Tests;

/// <summary>The real analysis, for tests of the whole way.</summary>
internal static class RealFold
{
    public static async Task RunAsync(BarnStore store, TimeZoneInfo zone, CancellationToken stop)
    {
        var options = new BarnOptions { Calendar = new FarmCalendar(zone), Lameness = new LamenessOptions { TimeZone = zone } };
        using var metrics = new BarnMetrics(store);
        var worker = new HerdWorker(store, options, TimeProvider.System, metrics, NullLogger<HerdWorker>.Instance);
        try
        {
            while (true)
            {
                if (!await worker.RunOnceAsync(stop))
                    await store.Progress.UntilAppendedAsync(store.Progress.Folded, stop);
            }
        }
        catch (OperationCanceledException)
        {
            // The farm closes.
        }
    }
}
