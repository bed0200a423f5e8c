using System.Diagnostics;
using System.Globalization;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>The working set of the service over a year's store of 300 cows: after its start, while raw frames pour in, while pages are read.</summary>
internal static class MemoryBenchmark
{
    public static async Task RunAsync()
    {
        using var workshop = new Workshop();
        await YearOfCows.RecordAsync(workshop.File("year.ndjson"));
        await ReplayBenchmark.ReplayAsync(workshop);

        var (http, mqtt) = (Workshop.FreePort(), Workshop.FreePort());
        var process = workshop.StartGaitWatch(
            "run", $"--GaitWatch:DataDirectory={workshop.File("data")}", $"--GaitWatch:Http:Urls=http://127.0.0.1:{http}", $"--GaitWatch:Mqtt:Port={mqtt}",
            "--Logging:LogLevel:Default=Warning");
        using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{http}/"), Timeout = TimeSpan.FromMinutes(5) };
        await ReadyAsync(client, process);

        var table = new FigureTable("the service over a year of 300 cows", "working set, MB");
        table.Add("started", Megabytes(process));
        foreach (var page in (string[])["", "cows", "platforms", "api/flags", "api/trim-list", "api/alerts", "api/cows"])
            await client.GetStringAsync(page);
        table.Add("every kind of page read once", Megabytes(process));
        var sent = await FramesAsync(mqtt);
        table.Add($"{sent} frames taken as fast as they come", Megabytes(process));
        process.Refresh();
        table.Add("peak", (process.PeakWorkingSet64 / 1e6).ToString("0", CultureInfo.InvariantCulture));
        table.Write();
    }

    private static async Task<long> FramesAsync(int port)
    {
        var spec = HerdSpec.Barn(3, 300, 365);
        var barn = new DemoBarn(spec with { Days = 366 });
        await using var transport = await MqttTransport.ConnectAsync(new MqttTransportOptions { Port = port, InFlight = 500 });
        foreach (var input in barn.Live(spec.End.AddHours(5)).Take(10_000))
            await transport.SendAsync(input, CancellationToken.None);
        await transport.FlushAsync(CancellationToken.None);
        return transport.Sent;
    }

    private static async Task ReadyAsync(HttpClient client, Process process)
    {
        while (!process.HasExited)
        {
            try
            {
                if ((await client.GetAsync("readyz")).IsSuccessStatusCode)
                    return;
            }
            catch (HttpRequestException)
            {
                // Not listening yet.
            }

            await Task.Delay(100);
        }

        throw new InvalidOperationException($"The service ended with {process.ExitCode}.");
    }

    private static string Megabytes(Process process)
    {
        process.Refresh();
        return (process.WorkingSet64 / 1e6).ToString("0", CultureInfo.InvariantCulture);
    }
}
