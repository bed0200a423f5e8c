using System.Collections.Concurrent;
using System.Diagnostics;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Microsoft.Extensions.Configuration;

namespace GaitWatch.Tests;

/// <summary>What the service tells of itself, as those read it who gather it.</summary>
public sealed class MetricsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    /// <summary>Prometheus' own linter takes the text without a word: names, units, suffixes, help.</summary>
    [Fact]
    public async Task The_text_is_one_that_promtool_takes()
    {
        await using var service = await StartAsync();
        var (type, text) = await MetricsAsync(service, "text/plain");
        Assert.Equal("text/plain", type);
        foreach (var name in new[] { "gaitwatch_worker_lag", "gaitwatch_series_pending", "gaitwatch_series_lag_seconds", "gaitwatch_series_sent_total", "gaitwatch_series_refused_total" })
            Assert.Contains($"# HELP {name} ", text, StringComparison.Ordinal);

        var promtool = Path.Combine(Repository.Root, "artifacts", "tools", "promtool");
        using var lint = Process.Start(new ProcessStartInfo(File.Exists(promtool) ? promtool : "promtool", ["check", "metrics"]) { RedirectStandardInput = true, RedirectStandardError = true, RedirectStandardOutput = true })!;
        var said = lint.StandardError.ReadToEndAsync();
        await lint.StandardInput.WriteAsync(text);
        lint.StandardInput.Close();
        await lint.WaitForExitAsync();
        Assert.True(lint.ExitCode == 0, await said);
    }

    // OpenMetrics 1.0 (prometheus.io/docs/specs/om/open_metrics_spec): the media type, and the last line.
    [Fact]
    public async Task Whoever_asks_for_OpenMetrics_gets_it()
    {
        await using var service = await StartAsync();
        var (type, text) = await MetricsAsync(service, "application/openmetrics-text");
        Assert.Equal("application/openmetrics-text", type);
        Assert.EndsWith("# EOF\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_collector_that_is_named_is_told_of_requests_and_without_one_nothing_is_sent()
    {
        var port = FreePort.Take();
        using var collector = new HttpListener { Prefixes = { $"http://127.0.0.1:{port}/" } };
        collector.Start();
        var told = new ConcurrentQueue<(string Path, string Body)>();
        var listening = Task.Run(async () =>
        {
            while (collector.IsListening)
            {
                try
                {
                    var http = await collector.GetContextAsync();
                    using var body = new StreamReader(http.Request.InputStream, Encoding.Latin1);
                    told.Enqueue((http.Request.Url!.AbsolutePath, await body.ReadToEndAsync()));
                    http.Response.Close();
                }
                catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
                {
                    return;
                }
            }
        });

        foreach (var named in new[] { false, true })
        {
            await using (var service = await StartAsync(named ? [new("OTEL_EXPORTER_OTLP_ENDPOINT", $"http://127.0.0.1:{port}"), new("OTEL_EXPORTER_OTLP_PROTOCOL", "http/protobuf")] : []))
            {
                using var client = new HttpClient { BaseAddress = service.Address };
                await client.GetStringAsync("healthz");
            }

            // What was not sent yet is sent when the service ends.
            Assert.Equal(named, told.Any(one => one.Path == "/v1/traces" && one.Body.Contains("healthz", StringComparison.Ordinal)));
        }

        collector.Stop();
        await listening;
    }

    private static async Task<(string? Type, string Text)> MetricsAsync(LocalService service, string accept)
    {
        using var client = new HttpClient { BaseAddress = service.Address };
        // A request before, so that the web server has something to tell.
        await client.GetStringAsync("healthz");
        using var request = new HttpRequestMessage(HttpMethod.Get, "metrics");
        request.Headers.Accept.Add(new MediaTypeWithQualityHeaderValue(accept));
        using var answer = await client.SendAsync(request);
        return (answer.Content.Headers.ContentType?.MediaType, await answer.Content.ReadAsStringAsync());
    }

    private async Task<LocalService> StartAsync(params KeyValuePair<string, string?>[] more)
    {
        var configuration = new ConfigurationBuilder().AddInMemoryCollection(
        [
            new("GaitWatch:DataDirectory", _folder.Path), new("Logging:LogLevel:Default", "Critical"),
            new("GaitWatch:Influx:Url", "http://127.0.0.1:9"), new("GaitWatch:Influx:Token", "t"), new("GaitWatch:Influx:Org", "farm"), new("GaitWatch:Influx:Bucket", "gaitwatch"), .. more,
        ]).Build();
        var settings = SettingsReader.Read(configuration, TimeZoneInfo.Utc, _folder.Path).Settings!;
        return await LocalService.StartAsync(settings, configuration, TimeProvider.System, CancellationToken.None);
    }
}
