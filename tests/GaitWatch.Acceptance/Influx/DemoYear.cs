using System.Text.Json;
using System.Text.RegularExpressions;
using GaitWatch.Store.Tests;

namespace GaitWatch.Acceptance;

/// <summary>The demo's year in a real influxd: the program as a newcomer starts it, with the four settings of the export.</summary>
public sealed partial class DemoYear : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private ChildProcess? _demo;

    /// <summary>Name of the database, which InfluxDB 2 calls a bucket.</summary>
    public const string Bucket = "gaitwatch";

    internal Influxd Influxd { get; private set; } = null!;

    internal V2Bridge Bridge { get; private set; } = null!;

    internal HttpClient Client { get; private set; } = null!;

    internal string Said => _demo!.Said;

    public async Task InitializeAsync()
    {
        Influxd = await Influxd.StartAsync(Bucket);
        Bridge = await V2Bridge.StartAsync(Influxd.Address);
        _demo = ChildProcess.Start(
            "env",
            [
                $"TMPDIR={_folder.Sub("tmp")}", "dotnet", Programs.GaitWatch, "demo", $"--GaitWatch:Http:Urls=http://127.0.0.1:{Programs.FreePort()}", $"--GaitWatch:Mqtt:Port={Programs.FreePort()}",
                $"--GaitWatch:Influx:Url={Bridge.Address}", $"--GaitWatch:Influx:Token={V2Bridge.Token}", "--GaitWatch:Influx:Org=farm", $"--GaitWatch:Influx:Bucket={Bucket}",
            ],
            _folder.Path);
        var url = await Until.AsyncOf("the demo to say where it runs", () => Task.FromResult(Address().Match(_demo.Said)), found => found.Success, TimeSpan.FromMinutes(1), () => _demo.Said);
        Client = new HttpClient { BaseAddress = new Uri(url.Groups[1].Value) };
        await Until.AsyncOf("the demo to say what to look at", () => Task.FromResult(_demo.Said), said => said.Contains("Ctrl-C ends the demo.", StringComparison.Ordinal), TimeSpan.FromMinutes(8), () => _demo.Said);

        // What is told last: recoveries, the zeros of the platform that now sends raw samples, the service's own figures of two minutes.
        foreach (var query in new[] { "SELECT count(drop_percent) FROM recovery_day", "SELECT count(zero_kg) FROM platform_zero", "SELECT count(fold_seconds) FROM service" })
            await Until.AsyncOf(query, () => Influxd.NumberAsync(Bucket, query), found => found >= (query.Contains("service", StringComparison.Ordinal) ? 2 : 1), TimeSpan.FromMinutes(4), () => _demo.Said);
        await Until.AsyncOf("everything to be sent", SeriesAsync, series => series.GetProperty("pending").GetInt64() < 50, TimeSpan.FromMinutes(5), () => _demo.Said);
    }

    public async Task DisposeAsync()
    {
        if (_demo is not null)
        {
            await _demo.EndAsync();
            await _demo.DisposeAsync();
        }

        Client?.Dispose();
        if (Bridge is not null)
            await Bridge.DisposeAsync();
        if (Influxd is not null)
            await Influxd.DisposeAsync();
    }

    public void Dispose() => _folder.Dispose();

    internal async Task<JsonElement> JsonAsync(string route) => JsonDocument.Parse(await Client.GetStringAsync(route)).RootElement;

    internal Task<JsonElement> SeriesAsync() => JsonAsync("api/series");

    [GeneratedRegex(@"GaitWatch runs at (http://127\.0\.0\.1:\d+/)")]
    private static partial Regex Address();
}
