using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;

namespace GaitWatch.Store.Tests;

/// <summary>Debian's influxd 1.6, a real engine, on free ports of the loopback with a folder and settings of its own, ended by its id.</summary>
internal sealed class Influxd : IAsyncDisposable
{
    public const string Program = "/usr/bin/influxd";

    private readonly string _folder;
    private readonly string _config;
    private readonly HttpClient _client;
    private Process? _process;

    private Influxd(string folder, int port, int rpc)
    {
        _folder = folder;
        Port = port;
        _config = Path.Combine(folder, "influxdb.conf");
        _client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}/"), Timeout = TimeSpan.FromMinutes(2) };
        File.WriteAllText(_config, $"""
            reporting-disabled = true
            bind-address = "127.0.0.1:{rpc}"
            [meta]
            dir = "{folder}/meta"
            [data]
            dir = "{folder}/data"
            wal-dir = "{folder}/wal"
            query-log-enabled = false
            [http]
            bind-address = "127.0.0.1:{port}"
            log-enabled = false
            [monitor]
            store-enabled = false
            [logging]
            level = "error"
            """);
    }

    public int Port { get; }

    public Uri Address => _client.BaseAddress!;

    /// <summary>Starts it and makes a database.</summary>
    /// <param name="database">Its name: what InfluxDB 2 calls a bucket.</param>
    /// <param name="folder">Where it keeps everything; a temporary folder when null.</param>
    public static async Task<Influxd> StartAsync(string database = "gaitwatch", string? folder = null)
    {
        if (!File.Exists(Program))
            throw new FileNotFoundException($"{Program} is missing: apt-get install influxdb");
        var influxd = new Influxd(folder ?? Directory.CreateTempSubdirectory("gaitwatch-influxd-").FullName, FreePort(), FreePort());
        await influxd.RunAsync();
        await influxd.QueryAsync("", $"CREATE DATABASE \"{database}\"");
        return influxd;
    }

    /// <summary>Ends it as a power cut would; what it holds stays.</summary>
    public async Task KillAsync()
    {
        _process!.Kill();
        await _process.WaitForExitAsync();
        _process.Dispose();
        _process = null;
    }

    /// <summary>Starts it again where it was.</summary>
    public async Task RunAsync()
    {
        _process = Process.Start(new ProcessStartInfo(Program, ["-config", _config]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        _process.OutputDataReceived += (_, _) => { };
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        _process.BeginOutputReadLine();
        for (var since = Stopwatch.GetTimestamp(); ;)
        {
            try
            {
                using var answer = await _client.GetAsync("ping");
                return;
            }
            catch (HttpRequestException) when (!_process.HasExited && Stopwatch.GetElapsedTime(since) < TimeSpan.FromMinutes(1))
            {
                await Task.Delay(50);
            }
        }
    }

    /// <summary>Asks in InfluxQL; every series that comes back.</summary>
    public async Task<IReadOnlyList<InfluxSeries>> QueryAsync(string database, string query)
    {
        using var body = new FormUrlEncodedContent([new("db", database), new("epoch", "ms"), new("q", query)]);
        using var answer = await _client.PostAsync("query", body);
        var text = await answer.Content.ReadAsStringAsync();
        using var json = JsonDocument.Parse(text);
        var series = new List<InfluxSeries>();
        if (!json.RootElement.TryGetProperty("results", out var results))
            throw new InvalidOperationException($"InfluxDB answered {text} to {query}");
        foreach (var result in results.EnumerateArray())
        {
            if (result.TryGetProperty("error", out var error))
                throw new InvalidOperationException($"InfluxDB answered '{error}' to {query}");
            if (result.TryGetProperty("series", out var found))
                series.AddRange(found.EnumerateArray().Select(InfluxSeries.Of));
        }

        return series;
    }

    /// <summary>The one number a query gives; 0 when it gives nothing.</summary>
    public async Task<double> NumberAsync(string database, string query) =>
        await QueryAsync(database, query) is [var series, ..] ? series.Rows[0][1].GetDouble() : 0;

    public async ValueTask DisposeAsync()
    {
        if (_process is not null)
            await KillAsync();
        _client.Dispose();
        if (Directory.Exists(_folder))
            Directory.Delete(_folder, recursive: true);
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}

/// <summary>A series of an answer.</summary>
/// <param name="Name">The measurement.</param>
/// <param name="Tags">The tags it was grouped by.</param>
/// <param name="Columns">Names of the columns; the first is the time, Unix milliseconds.</param>
/// <param name="Rows">The rows.</param>
internal sealed record InfluxSeries(string Name, IReadOnlyDictionary<string, string> Tags, IReadOnlyList<string> Columns, IReadOnlyList<JsonElement[]> Rows)
{
    public IEnumerable<JsonElement> Column(string name)
    {
        var at = Columns.ToList().IndexOf(name);
        return Rows.Select(row => row[at]);
    }

    public static InfluxSeries Of(JsonElement series) => new(
        series.TryGetProperty("name", out var name) ? name.GetString()! : "",
        series.TryGetProperty("tags", out var tags) ? tags.EnumerateObject().ToDictionary(tag => tag.Name, tag => tag.Value.GetString()!) : new Dictionary<string, string>(),
        [.. series.GetProperty("columns").EnumerateArray().Select(column => column.GetString()!)],
        [.. series.GetProperty("values").EnumerateArray().Select(row => row.EnumerateArray().Select(value => value.Clone()).ToArray())]);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Name} {string.Join(',', Tags)}: {Rows.Count} rows");
}
