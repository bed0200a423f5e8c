using System.Text.Json;

namespace GaitWatch.Acceptance;

/// <summary>The first command a newcomer types.</summary>
[Collection(DemoGroup.Name)]
public sealed class DemoTests(DemoOnScreen barn) : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task The_demo_shows_a_list_and_lets_cows_cross()
    {
        var flags = JsonDocument.Parse(await barn.Client.GetStringAsync("api/flags")).RootElement.EnumerateArray().ToArray();
        // The simulator ends the year with seven or eight cows lame enough to be seen; nobody wants fifty on the list.
        Assert.InRange(flags.Length, 4, 30);
        Assert.Contains(flags, flag => flag.GetProperty("urgency").GetString() == "today");
        using (var page = await barn.Client.GetAsync(""))
            Assert.True(page.IsSuccessStatusCode);

        // Cows cross as one watches: raw frames are analysed into new passages.
        async Task<long> Passages() => JsonDocument.Parse(await barn.Client.GetStringAsync($"api/passages?from={DateTime.UtcNow.AddMinutes(-30):yyyy-MM-dd'T'HH:mm:ss'Z'}")).RootElement.GetArrayLength();
        var before = await Passages();
        await Until.AsyncOf("two more crossings", Passages, now => now >= before + 2, TimeSpan.FromMinutes(2), () => barn.Said);

        var (code, list) = await CommandRun.OfAsync(_folder.Path, "trim-list", "--url", barn.Address.ToString());
        Assert.Equal(0, code);
        Assert.Contains("Lift both hind feet.", list, StringComparison.Ordinal);

        // One cow has gone the whole way from flag to sound, another is stalled and back on the list; the farm works its tasks.
        async Task<JsonElement[]> ListAsync(string route) => [.. JsonDocument.Parse(await barn.Client.GetStringAsync(route)).RootElement.EnumerateArray()];
        var rows = await ListAsync("api/trim-list");
        var stalled = rows.First(row => row.GetProperty("reason").GetString() == "not-recovering").GetProperty("cow").GetString()!;
        Assert.Contains("stalled", (await CommandRun.OfAsync(_folder.Path, "recovery", stalled, "--url", barn.Address.ToString())).Item2, StringComparison.Ordinal);
        var blocked = (await ListAsync("api/findings")).Where(finding => finding.GetProperty("actions").ToString().Contains("\"block\"", StringComparison.Ordinal)).Select(finding => finding.GetProperty("cow").GetString()!).Distinct();
        var sound = new List<string>();
        foreach (var cow in blocked)
        {
            if ((await ListAsync($"api/cows/{cow}/recovery")).Any(foot => foot.GetProperty("status").GetString() == "recovered" && foot.GetProperty("marks").ToString().Contains("block-off", StringComparison.Ordinal)))
                sound.Add(cow);
        }

        Assert.NotEmpty(sound);
        Assert.Contains("recovered", (await CommandRun.OfAsync(_folder.Path, "recovery", sound[0], "--url", barn.Address.ToString())).Item2, StringComparison.Ordinal);
        var today = DateOnly.FromDateTime(DateTime.UtcNow);
        Assert.DoesNotContain(await ListAsync("api/follow-ups"), task => DateOnly.Parse(task.GetProperty("overdueOn").GetString()!) < today.AddDays(-14));
    }

    [Fact]
    public async Task Ended_in_the_middle_of_its_year_it_leaves_nothing_behind()
    {
        var temporary = _folder.Sub("tmp");
        await using var demo = DemoOnScreen.Start(_folder, temporary);
        await Until.AsyncOf("the year to begin", () => Task.FromResult(demo.Said), said => said.Contains("A year of crossings", StringComparison.Ordinal), TimeSpan.FromMinutes(5), () => demo.Said);
        Assert.NotEmpty(Directory.EnumerateFileSystemEntries(temporary, "gaitwatch-demo-*"));
        Assert.Equal(0, await demo.EndAsync("INT"));
        Assert.Empty(Directory.EnumerateFileSystemEntries(temporary, "gaitwatch-demo-*"));
    }
}
