using System.Net.Http.Json;
using System.Text.Json;

namespace GaitWatch.Acceptance;

/// <summary>The service as a barn runs it: its own process, its own data folder.</summary>
internal sealed class Service : IAsyncDisposable
{
    private readonly string[] _settings;
    private ChildProcess _process;

    private Service(string[] settings, ChildProcess process, int http, int mqtt)
    {
        _settings = settings;
        _process = process;
        MqttPort = mqtt;
        Address = new Uri($"http://127.0.0.1:{http}/");
        Client = new HttpClient { BaseAddress = Address, Timeout = TimeSpan.FromMinutes(5) };
    }

    public Uri Address { get; }

    public int MqttPort { get; }

    public HttpClient Client { get; }

    public ChildProcess Process => _process;

    /// <summary>Starts it and waits until it is ready.</summary>
    /// <param name="folder">Its working folder; the store is below it.</param>
    /// <param name="broker">The port of a broker of its own; null for the embedded one.</param>
    /// <param name="more">Settings beyond.</param>
    public static Task<Service> StartAsync(string folder, int? broker = null, params string[] more) => StartAsync(folder, Programs.FreePort(), broker, more);

    /// <summary>Starts it with a second address over HTTPS, and waits until it is ready.</summary>
    /// <param name="folder">Its working folder; the store is below it.</param>
    /// <param name="https">The port of the second address, at every address of this machine.</param>
    /// <param name="certificate">The PEM file of its certificate.</param>
    /// <param name="key">That of the key.</param>
    /// <param name="more">Settings beyond.</param>
    public static Task<Service> StartSecureAsync(string folder, int https, string certificate, string key, params string[] more)
    {
        var http = Programs.FreePort();
        return StartAsync(
            folder, http, null,
            [$"--GaitWatch:Http:Urls=http://127.0.0.1:{http};https://127.0.0.1:{https}", $"--GaitWatch:Http:Certificate={certificate}", $"--GaitWatch:Http:CertificateKey={key}", .. more]);
    }

    private static async Task<Service> StartAsync(string folder, int http, int? broker, string[] more)
    {
        var mqtt = broker ?? Programs.FreePort();
        string[] settings =
        [
            $"--GaitWatch:DataDirectory={Path.Combine(folder, "data")}", $"--GaitWatch:Http:Urls=http://127.0.0.1:{http}",
            $"--GaitWatch:Mqtt:Embedded={broker is null}", $"--GaitWatch:Mqtt:Port={mqtt}", "--GaitWatch:TimeZone=Europe/Dublin", .. more,
        ];
        var service = new Service(settings, Start(settings, folder), http, mqtt);
        await service.ReadyAsync();
        return service;
    }

    /// <summary>The settings with which a command of the command line speaks to this service or its store.</summary>
    public IReadOnlyList<string> Settings => _settings;

    /// <summary>Starts it again with the same settings after it was killed or ended.</summary>
    public async Task RestartAsync()
    {
        _process = Start(_settings, Path.GetTempPath());
        await ReadyAsync();
    }

    public async Task<JsonElement> JsonAsync(string route) => await Client.GetFromJsonAsync<JsonElement>(route);

    /// <summary>Waits until so many inputs have come (new ones, rejected, doubles), and all are folded into the state.</summary>
    public Task<JsonElement> UntilFoldedAsync(long received) => Until.AsyncOf(
        $"{received} inputs received and none pending", () => JsonAsync("api/ingest"),
        counts => counts.GetProperty("received").GetInt64() >= received && counts.GetProperty("pending").GetInt64() == 0,
        TimeSpan.FromMinutes(5), () => _process.Said);

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _process.DisposeAsync();
    }

    private static ChildProcess Start(string[] settings, string folder) =>
        ChildProcess.Start("dotnet", [Programs.GaitWatch, "run", .. settings], folder);

    private Task<JsonElement> ReadyAsync() => Until.AsyncOf(
        "the service to be ready",
        () => _process.HasExited ? throw new EarlyExitException(_process.Said) : JsonAsync("readyz"),
        ready => ready.GetProperty("ready").GetBoolean(), TimeSpan.FromSeconds(120), () => _process.Said);

    private sealed class EarlyExitException(string said) : Exception($"The service ended at its start. It said:\n{said}");
}
