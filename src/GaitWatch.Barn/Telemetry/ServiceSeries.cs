using GaitWatch.Store;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>Puts the service's own figures into the outbox once a minute, so that a board beside the cows' curves shows how it fares.</summary>
internal sealed class ServiceSeries(BarnStore store, BarnMetrics metrics, TimeProvider time, ILogger<ServiceSeries> log) : BackgroundService
{
    private static readonly TimeSpan Every = TimeSpan.FromMinutes(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        if (!store.Series.IsOn)
            return;
        using var timer = new PeriodicTimer(Every, time);
        try
        {
            do
                await TellAsync(stoppingToken);
            while (await timer.WaitForNextTickAsync(stoppingToken));
        }
        catch (OperationCanceledException)
        {
            // Stopped.
        }
    }

    private async Task TellAsync(CancellationToken cancellation)
    {
        try
        {
            var counts = await store.Reader.IngestAsync(cancellation);
            var (commit, fold, failures) = metrics.SinceLastAsked();
            await store.Series.AppendAsync(
                [
                    ServicePoints.Of(store.Options.Farm, time.GetUtcNow(), new ServiceFigures
                    {
                        Received = counts.Received,
                        Stored = counts.Stored,
                        Rejected = counts.Rejected,
                        Duplicates = counts.Duplicates,
                        PendingInputs = counts.Pending,
                        CommitSeconds = commit,
                        FoldSeconds = fold,
                        FoldFailures = failures,
                        UnsentPoints = store.Series.Pending,
                        UnsentSeconds = store.Series.Lag.TotalSeconds,
                        RefusedPoints = store.Series.State.Refused,
                        MemoryBytes = Environment.WorkingSet,
                    }),
                ],
                cancellation);
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            // The next minute tells again; what matters is told by the log of whoever failed first.
            log.FiguresNotTold(fault.Message);
        }
    }
}
