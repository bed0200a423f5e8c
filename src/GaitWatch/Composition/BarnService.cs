using GaitWatch.Barn;
using GaitWatch.Store;
using GaitWatch.Web;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace GaitWatch;

/// <summary>
/// The service, put together: the store, the barn side (broker, analysis, topics), the API and the pages. All that the host
/// adds is how they meet.
/// </summary>
internal sealed class BarnService : IAsyncDisposable
{
    private readonly BarnStore _store;
    private readonly WebApplication _app;

    private BarnService(BarnStore store, WebApplication app)
    {
        _store = store;
        _app = app;
    }

    /// <summary>The addresses at which it listens, with the ports it was given.</summary>
    public IReadOnlyList<Uri> Addresses =>
        [.. _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Select(address => new Uri(address.Replace("*", "localhost", StringComparison.Ordinal).Replace("+", "localhost", StringComparison.Ordinal)))];

    /// <summary>The store.</summary>
    public BarnStore Store => _store;

    /// <summary>Opens the store and starts everything.</summary>
    /// <param name="settings">The settings, found usable.</param>
    /// <param name="configuration">Where they come from; logging takes its levels from it.</param>
    /// <param name="mqtt">Whether readings come and alerts go over MQTT; without it only what is handed over HTTP comes in.</param>
    /// <param name="time">The clock.</param>
    /// <param name="cancellation">Gives up starting.</param>
    /// <exception cref="StoreUnavailableException">The store cannot be opened.</exception>
    /// <exception cref="CommandFailedException">An address or port is not to be had.</exception>
    public static async Task<BarnService> StartAsync(
        GaitWatchSettings settings, IConfiguration configuration, bool mqtt, TimeProvider time, CancellationToken cancellation)
    {
        var store = await BarnStore.OpenAsync(Translation.Store(settings), time, cancellation);
        try
        {
            var app = Build(settings, configuration, store, mqtt, time);
            var service = new BarnService(store, app);
            await service.StartAsync(settings, cancellation);
            return service;
        }
        catch
        {
            await store.DisposeAsync();
            throw;
        }
    }

    /// <summary>Waits until it is told to stop, and stops it in order.</summary>
    /// <param name="stop">Says when; the process's own signals do too.</param>
    public async Task UntilStoppedAsync(CancellationToken stop)
    {
        var stopping = _app.Services.GetRequiredService<IHostApplicationLifetime>().ApplicationStopping;
        using var either = CancellationTokenSource.CreateLinkedTokenSource(stop, stopping);
        await Task.Delay(Timeout.Infinite, either.Token).ContinueWith(_ => { }, TaskScheduler.Default);
    }

    /// <summary>Stops everything in order: nothing more comes in, what came in is finished, the store is closed last.</summary>
    public async ValueTask DisposeAsync()
    {
        await _app.StopAsync();
        await _app.DisposeAsync();
        await _store.DisposeAsync();
    }

    private static WebApplication Build(GaitWatchSettings settings, IConfiguration configuration, BarnStore store, bool mqtt, TimeProvider time)
    {
        var builder = WebApplication.CreateSlimBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.Configuration.Sources.Clear();
        builder.Configuration.AddConfiguration(configuration);
        builder.Logging.AddFarmConsole(configuration, settings.TimeZone, time);
        builder.WebHost.UseKestrelHttpsConfiguration();
        builder.WebHost.UsePagesServer(settings.Http);
        builder.Services.Configure<HostOptions>(host => host.ShutdownTimeout = TimeSpan.FromSeconds(25));
        builder.Services.AddSingleton(time);
        builder.Services.AddSingleton(store);
        if (mqtt)
            builder.Services.AddBarn(Translation.Barn(settings));
        else
            builder.Services.AddAnalysis(Translation.Barn(settings));
        if (settings.Influx is { } influx)
            builder.Services.AddSeriesExport(Translation.Influx(influx));
        builder.Services.AddWeb(Translation.Web(settings));
        builder.Services.AddSingleton<IRecordedInputs, RecordedInputs>();
        builder.Services.AddServiceTelemetry(configuration);
        var app = builder.Build();
        app.MapWeb();
        app.MapServiceTelemetry();
        return app;
    }

    private static string Listening(HttpSettings http) => http.ShareUrls.IsEmpty
        ? $"GaitWatch:Http:Urls is '{string.Join(';', http.Urls)}'"
        : $"GaitWatch:Http:Urls is '{string.Join(';', http.Urls)}' and ShareUrls '{string.Join(';', http.ShareUrls)}'";

    private async Task StartAsync(GaitWatchSettings settings, CancellationToken cancellation)
    {
        try
        {
            await _app.StartAsync(cancellation);
        }
        catch (Exception e)
        {
            await _app.DisposeAsync();
            throw e switch
            {
                IOException { InnerException: AddressInUseException } => new CommandFailedException(
                    $"{Listening(settings.Http)}: another program listens there; stop it or set another port.", e),
                BrokerStartException => new CommandFailedException(e.Message, e),
                IOException or System.Net.Sockets.SocketException => new CommandFailedException(
                    $"{Listening(settings.Http)}: cannot be listened at ({e.Message.TrimEnd('.')}); an address of this machine is needed.", e),
                _ => e,
            };
        }
    }
}
