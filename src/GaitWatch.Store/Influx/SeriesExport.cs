using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GaitWatch.Store;

/// <summary>Sends the series to InfluxDB for as long as the service runs. What it waits for, nobody else waits for.</summary>
internal sealed class SeriesExport(BarnStore store, InfluxOptions options, TimeProvider time, SeriesMetrics metrics, ILogger<SeriesExport> log) : BackgroundService
{
    private static readonly TimeSpan FeedEvery = TimeSpan.FromSeconds(1);
    private static readonly TimeSpan StorePause = TimeSpan.FromSeconds(5);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        // Asked for so that the instruments are there as long as this is.
        _ = metrics;
        using var target = new InfluxTarget(options);
        var sender = new SeriesSender(store.Series, target, options.PointsPerWrite, time, Random.Shared.NextDouble);
        await Task.WhenAll(
            UntilStoppedAsync(cancellation => SendAsync(sender, cancellation), stoppingToken),
            UntilStoppedAsync(FeedAsync, stoppingToken));
    }

    private async Task UntilStoppedAsync(Func<CancellationToken, Task> turn, CancellationToken stopping)
    {
        while (!stopping.IsCancellationRequested)
        {
            try
            {
                await turn(stopping);
            }
            catch (OperationCanceledException) when (stopping.IsCancellationRequested)
            {
                return;
            }
            catch (Exception fault)
            {
                log.SeriesTurnFailed(fault.Message, fault);
                await Task.Delay(StorePause, time, stopping).ContinueWith(_ => { }, TaskScheduler.Default);
            }
        }
    }

    private async Task SendAsync(SeriesSender sender, CancellationToken cancellation)
    {
        await store.Series.UntilPendingAsync(cancellation);
        var failed = store.Series.State.Failures;
        var delay = await sender.SendAsync(cancellation);
        if (delay is { } wait)
        {
            if (failed == 0)
                log.SeriesNotTaken(store.Series.State.Fault!, store.Series.Pending);
            await Task.Delay(wait, time, cancellation);
        }
        else if (failed > 0)
        {
            log.SeriesTakenAgain(failed);
        }
    }

    private async Task FeedAsync(CancellationToken cancellation)
    {
        if (!await store.Backfill.StepAsync(cancellation))
            await Task.Delay(FeedEvery, time, cancellation);
    }
}

/// <summary>Adds the export to a host.</summary>
public static class SeriesServices
{
    /// <summary>Adds it. The host provides <see cref="BarnStore"/>, opened with <see cref="StoreOptions.ExportSeries"/>, <see cref="TimeProvider"/> and logging.</summary>
    public static IServiceCollection AddSeriesExport(this IServiceCollection services, InfluxOptions options)
    {
        services.AddSingleton(options);
        services.AddSingleton<SeriesMetrics>();
        services.AddHostedService<SeriesExport>();
        return services;
    }
}
