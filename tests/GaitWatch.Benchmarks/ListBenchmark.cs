using System.Diagnostics;
using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch.Benchmarks;

/// <summary>
/// How long the trimmer's list, the morning's flags and tasks, and the statistics take from the store of five thousand cows after five
/// years; beside one pass over what was entered in that time, which is the least that any of them needs that keeps nothing.
/// </summary>
internal static class ListBenchmark
{
    private const int Times = 9;

    public static async Task RunAsync()
    {
        using var workshop = new Workshop();
        var options = new StoreOptions { DataDirectory = workshop.Folder, Calendar = FiveYearsOfCows.Calendar };
        await using (var store = await BarnStore.OpenAsync(options, TimeProvider.System))
        {
            var (writes, passages, alerts) = await FiveYearsOfCows.FillAsync(store);
            Console.WriteLine($"{FiveYearsOfCows.Cows} cows; {writes} entries and {alerts} alerts of five years, {passages} passages of the last weeks\n");
        }

        // Read as after a start: nothing is kept in memory yet.
        await using var opened = await BarnStore.OpenAsync(options, TimeProvider.System);
        var reader = opened.Reader;
        var list = await reader.TrimListAsync(null);
        var pass = await TimeAsync(async () =>
        {
            await using var state = await opened.BeginAsync();
            await state.WritesUntilAsync(long.MaxValue);
        });
        var table = new FigureTable("from the store", "first, ms", "then, ms (median)", "to one pass over the entries");
        foreach (var (name, run) in new (string, Func<Task>)[]
        {
            ($"the next visit's list ({list.Rows.Length} rows)", () => reader.TrimListAsync(null)),
            ("the morning's flags", () => reader.FlagsAsync(FiveYearsOfCows.LastDay)),
            ("the morning's tasks", () => reader.FollowUpsAsync(FiveYearsOfCows.LastDay)),
            ("the list of yesterday, from what was known then", () => reader.TrimListAsync(FiveYearsOfCows.LastDay.AddDays(-1))),
            ("what works here, a year", async () => await reader.TreatmentsAsync(await reader.LastYearAsync())),
            ("hit rate, a year", async () => await reader.HitRateAsync(await reader.LastYearAsync())),
        })
        {
            var (first, median) = await TimeAsync(run);
            table.Add(name, Ms(first), Ms(median), (median / pass.Median).ToString("0.00", CultureInfo.InvariantCulture));
        }

        table.Add("one pass over the entries", Ms(pass.First), Ms(pass.Median), "1.00");
        table.Write();
    }

    private static async Task<(TimeSpan First, TimeSpan Median)> TimeAsync(Func<Task> run)
    {
        var took = new List<TimeSpan>();
        for (var i = 0; i <= Times; i++)
        {
            var since = Stopwatch.GetTimestamp();
            await run();
            took.Add(Stopwatch.GetElapsedTime(since));
            if (took.Sum(time => time.TotalSeconds) > 20)
                break;
        }

        return (took[0], took.Count == 1 ? took[0] : took.Skip(1).Order().ElementAt((took.Count - 1) / 2));
    }

    private static string Ms(TimeSpan time) => time.TotalMilliseconds.ToString("0", CultureInfo.InvariantCulture);
}
