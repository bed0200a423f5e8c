using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;

namespace GaitWatch;

/// <summary>
/// The API, wherever it is: of the running service, or, where none runs, of one over the same store inside this process for
/// as long as the command takes, without a broker. So a verb has one way to ask, and prints the same either way.
/// </summary>
internal sealed class ServiceConnection : IAsyncDisposable
{
    private readonly LocalService? _local;

    private ServiceConnection(HttpClient client, TimeZoneInfo zone, LocalService? local)
    {
        Api = new ApiClient(client);
        Zone = zone;
        _local = local;
    }

    /// <summary>The API.</summary>
    public ApiClient Api { get; }

    /// <summary>The farm's time zone.</summary>
    public TimeZoneInfo Zone { get; }

    /// <summary>Whether a running service answers; else the store of this machine does.</summary>
    public bool IsRunning => _local is null;

    /// <summary>Finds the service, or opens the store.</summary>
    /// <param name="context">Of the command.</param>
    /// <param name="url">Where to look; null for the first address of the settings.</param>
    /// <param name="makeStore">Whether a store may be made where there is none.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="CommandFailedException">Neither a service nor a store is there.</exception>
    public static async Task<ServiceConnection> OpenAsync(CommandContext context, Uri? url, bool makeStore, CancellationToken cancellation)
    {
        var configuration = context.Configuration();
        var settings = context.Settings(configuration);
        url ??= OwnAddress(settings.Http);
        var client = Client(url, settings.Http);
        if (await AnswersAsync(client, url, cancellation))
            return new ServiceConnection(client, settings.TimeZone, null);
        client.Dispose();

        if (!makeStore && !Directory.Exists(settings.DataDirectory))
        {
            throw new CommandFailedException(
                $"No service listens at {url} and there is no store in {settings.DataDirectory}: start one with 'gaitwatch run', or name it with --url or --GaitWatch:DataDirectory=FOLDER.");
        }

        await context.Error.WriteLineAsync($"No service listens at {url}; using the store in {settings.DataDirectory}.");
        var local = await LocalService.StartAsync(settings, configuration, context.Time, cancellation);
        return new ServiceConnection(Client(local.Address, settings.Http), settings.TimeZone, local);
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Api.Dispose();
        if (_local is not null)
            await _local.DisposeAsync();
    }

    /// <summary>How this machine reaches the service that listens at the settings' first address.</summary>
    internal static Uri OwnAddress(HttpSettings http)
    {
        var address = BindingAddress.Parse(http.Urls[0]);
        var host = address.Host is "*" or "+" or "0.0.0.0" or "[::]" ? "127.0.0.1" : address.Host;
        return new Uri($"{address.Scheme}://{host}:{address.Port}/");
    }

    /// <summary>A client that believes the farm's own certificate when it speaks to this machine.</summary>
    internal static HttpClient Client(Uri url, HttpSettings http)
    {
        var handler = new SocketsHttpHandler { UseProxy = !url.IsLoopback, ConnectTimeout = TimeSpan.FromSeconds(10) };
        if (url.IsLoopback && http.Certificate is { } file)
        {
            var own = X509CertificateLoader.LoadCertificateFromFile(file);
            handler.SslOptions.RemoteCertificateValidationCallback =
                (_, shown, _, errors) => errors == System.Net.Security.SslPolicyErrors.None || own.Equals(shown);
        }

        // A replay's answer takes as long as the store needs; what does not come at all is noticed at connecting.
        return new HttpClient(handler) { BaseAddress = url, Timeout = TimeSpan.FromMinutes(10) };
    }

    /// <summary>Whether GaitWatch answers there.</summary>
    /// <returns>False when nothing listens there.</returns>
    /// <exception cref="CommandFailedException">Something is there, but it does not answer as GaitWatch does.</exception>
    internal static async Task<bool> AnswersAsync(HttpClient client, Uri url, CancellationToken cancellation)
    {
        try
        {
            using var answer = await client.GetAsync(new Uri("healthz", UriKind.Relative), cancellation).WaitAsync(TimeSpan.FromSeconds(15), cancellation);
            return answer.IsSuccessStatusCode
                ? true
                : throw new CommandFailedException($"What listens at {url} is not GaitWatch: /healthz answered {(int)answer.StatusCode}. Name the service with --url.");
        }
        catch (HttpRequestException e) when (e.InnerException is SocketException { SocketErrorCode: SocketError.ConnectionRefused })
        {
            return false;
        }
        catch (HttpRequestException e)
        {
            throw new CommandFailedException($"{url} cannot be asked: {e.Message}", e);
        }
        catch (TimeoutException e)
        {
            throw new CommandFailedException($"{url} takes the connection but does not answer within 15 seconds.", e);
        }
    }
}
