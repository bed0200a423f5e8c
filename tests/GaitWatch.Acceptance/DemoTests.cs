using System.Text.RegularExpressions;
using Xunit.Abstractions;

namespace GaitWatch.Acceptance;

/// <summary>The first command a newcomer types.</summary>
public sealed partial class DemoTests(ITestOutputHelper output) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task The_demo_shows_a_list_lets_cows_cross_and_leaves_nothing_behind()
    {
        var since = System.Diagnostics.Stopwatch.StartNew();
        var temporary = _folder.Sub("tmp");
        await using var demo = ChildProcess.Start("env", [$"TMPDIR={temporary}", "dotnet", Programs.GaitWatch, "demo", $"--GaitWatch:Http:Urls=http://127.0.0.1:{Programs.FreePort()}", $"--GaitWatch:Mqtt:Port={Programs.FreePort()}"], _folder.Path);
        var url = await Until.AsyncOf("the demo to say where it runs", () => Task.FromResult(Address().Match(demo.Said)), found => found.Success, TimeSpan.FromMinutes(1), () => demo.Said);
        using var client = new HttpClient { BaseAddress = new Uri(url.Groups[1].Value) };

        await Until.AsyncOf("the demo to say what to look at", () => Task.FromResult(demo.Said), said => said.Contains("Ctrl-C ends the demo.", StringComparison.Ordinal), TimeSpan.FromMinutes(5), () => demo.Said);
        output.WriteLine($"The list was there after {since.Elapsed.TotalSeconds:0} s.");
        var flags = System.Text.Json.JsonDocument.Parse(await client.GetStringAsync("api/flags")).RootElement.EnumerateArray().ToArray();
        // The simulator ends the year with seven or eight cows lame enough to be seen; nobody wants fifty on the list.
        Assert.InRange(flags.Length, 4, 30);
        Assert.Contains(flags, flag => flag.GetProperty("urgency").GetString() == "today");
        Assert.True((await client.GetAsync("")).IsSuccessStatusCode);

        // Cows cross as one watches: raw frames are analysed into new passages.
        async Task<long> Passages() => System.Text.Json.JsonDocument.Parse(await client.GetStringAsync($"api/passages?from={DateTime.UtcNow.AddMinutes(-30):yyyy-MM-dd'T'HH:mm:ss'Z'}")).RootElement.GetArrayLength();
        var before = await Passages();
        await Until.AsyncOf("two more crossings", Passages, now => now >= before + 2, TimeSpan.FromMinutes(2), () => demo.Said);

        var (code, list) = await CommandRun.OfAsync(_folder.Path, "trim-list", "--url", url.Groups[1].Value);
        Assert.Equal(0, code);
        Assert.Contains("Lift both hind feet.", list, StringComparison.Ordinal);

        // One cow has gone the whole way from flag to sound, another is stalled and back on the list; the farm works its tasks.
        async Task<System.Text.Json.JsonElement[]> ListAsync(string route) => [.. System.Text.Json.JsonDocument.Parse(await client.GetStringAsync(route)).RootElement.EnumerateArray()];
        var rows = await ListAsync("api/trim-list");
        var stalled = rows.First(row => row.GetProperty("reason").GetString() == "not-recovering").GetProperty("cow").GetString()!;
        Assert.Contains("stalled", (await CommandRun.OfAsync(_folder.Path, "recovery", stalled, "--url", url.Groups[1].Value)).Item2, StringComparison.Ordinal);
        var blocked = (await ListAsync("api/findings")).Where(finding => finding.GetProperty("actions").ToString().Contains("\"block\"", StringComparison.Ordinal)).Select(finding => finding.GetProperty("cow").GetString()!).Distinct();
        var sound = new List<string>();
        foreach (var cow in blocked)
        {
            if ((await ListAsync($"api/cows/{cow}/recovery")).Any(foot => foot.GetProperty("status").GetString() == "recovered" && foot.GetProperty("marks").ToString().Contains("block-off", StringComparison.Ordinal)))
                sound.Add(cow);
        }

        Assert.NotEmpty(sound);
        Assert.Contains("recovered", (await CommandRun.OfAsync(_folder.Path, "recovery", sound[0], "--url", url.Groups[1].Value)).Item2, StringComparison.Ordinal);
        var today = DateOnly.FromDateTime(DateTime.UtcNow);
        Assert.DoesNotContain(await ListAsync("api/follow-ups"), task => DateOnly.Parse(task.GetProperty("overdueOn").GetString()!) < today.AddDays(-14));

        Assert.Equal(0, await demo.EndAsync("INT"));
        Assert.Empty(Directory.EnumerateFileSystemEntries(temporary, "gaitwatch-demo-*"));
    }

    [GeneratedRegex(@"GaitWatch runs at (http://127\.0\.0\.1:\d+/)")]
    private static partial Regex Address();
}
