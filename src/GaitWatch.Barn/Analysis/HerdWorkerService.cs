using GaitWatch.Store;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Barn;

/// <summary>Has the <see cref="HerdWorker"/> fold whatever comes in, for as long as the service runs.</summary>
internal sealed class HerdWorkerService(HerdWorker worker, BarnStore store, TimeProvider time, ILogger<HerdWorkerService> log) : BackgroundService
{
    private readonly Backoff _backoff = new(TimeSpan.FromSeconds(1), TimeSpan.FromSeconds(60), Random.Shared.NextDouble);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                if (!await worker.RunOnceAsync(stoppingToken))
                    await store.Progress.UntilAppendedAsync(store.Progress.Folded, stoppingToken);
                _backoff.Reset();
            }
            catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                // Inputs stay durable and taking them goes on; the analysis tries again, ever more slowly.
                var delay = _backoff.Next();
                log.AnalysisStalled(delay.TotalSeconds, fault.Message, fault);
                try
                {
                    await Task.Delay(delay, time, stoppingToken);
                }
                catch (OperationCanceledException)
                {
                    return;
                }
            }
        }
    }
}
