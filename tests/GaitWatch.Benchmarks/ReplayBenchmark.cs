using System.Diagnostics;
using System.Globalization;

namespace GaitWatch.Benchmarks;

/// <summary>A year of 300 cows from a recording to the finished state: <c>gaitwatch replay</c> as a process of its own into an empty store.</summary>
internal static class ReplayBenchmark
{
    public static async Task RunAsync()
    {
        using var workshop = new Workshop();
        var passages = await YearOfCows.RecordAsync(workshop.File("year.ndjson"));
        var (took, peak) = await ReplayAsync(workshop);
        var table = new FigureTable("a year of 300 cows", "");
        table.Add("passages", passages.ToString(CultureInfo.InvariantCulture));
        table.Add("seconds, replay and analysis", took.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture));
        table.Add("passages a second", (passages / took.TotalSeconds).ToString("0", CultureInfo.InvariantCulture));
        table.Add("days of the barn a second", (365 / took.TotalSeconds).ToString("0.0", CultureInfo.InvariantCulture));
        table.Add("peak memory, MB", (peak / 1e6).ToString("0", CultureInfo.InvariantCulture));
        table.Add("store on disk, MB", (new DirectoryInfo(workshop.File("data")).EnumerateFiles().Sum(file => file.Length) / 1e6).ToString("0", CultureInfo.InvariantCulture));
        table.Write();
    }

    /// <summary>Replays the workshop's recording into its store.</summary>
    /// <returns>How long it took from start to end of the process, and the largest working set it had, bytes.</returns>
    public static async Task<(TimeSpan Took, long PeakBytes)> ReplayAsync(Workshop workshop)
    {
        var since = Stopwatch.GetTimestamp();
        var process = workshop.StartGaitWatch(
            "replay", workshop.File("year.ndjson"), $"--GaitWatch:DataDirectory={workshop.File("data")}", $"--GaitWatch:Http:Urls=http://127.0.0.1:{Workshop.FreePort()}",
            "--Logging:LogLevel:Default=Warning");
        long peak = 0;
        while (!process.HasExited)
        {
            process.Refresh();
            peak = Math.Max(peak, process.HasExited ? 0 : process.PeakWorkingSet64);
            await Task.Delay(100);
        }

        return process.ExitCode == 0 ? (Stopwatch.GetElapsedTime(since), peak) : throw new InvalidOperationException($"The replay ended with {process.ExitCode}.");
    }
}
