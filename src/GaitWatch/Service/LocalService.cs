
namespace GaitWatch;

/// <summary>The API over the store inside this process, for one command: no broker, a port of its own that only this machine reaches.</summary>
internal sealed class LocalService : IAsyncDisposable
{
    private readonly BarnService _service;

    private LocalService(BarnService service) => _service = service;

    /// <summary>Where it listens.</summary>
    public Uri Address => _service.Addresses[0];

    /// <summary>Opens the store, lets the analysis catch up with what was left unfinished, and listens.</summary>
    /// <exception cref="Store.StoreUnavailableException">The store cannot be opened; another process may hold it.</exception>
    public static async Task<LocalService> StartAsync(GaitWatchSettings settings, IConfiguration configuration, TimeProvider time, CancellationToken cancellation)
    {
        var here = settings with { Http = new HttpSettings { Urls = ["http://127.0.0.1:0"] } };
        var service = await BarnService.StartAsync(here, configuration, mqtt: false, time, cancellation);
        try
        {
            await service.Store.Progress.UntilFoldedAsync(service.Store.Progress.Appended, cancellation);
            return new LocalService(service);
        }
        catch
        {
            await service.DisposeAsync();
            throw;
        }
    }

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => _service.DisposeAsync();
}
