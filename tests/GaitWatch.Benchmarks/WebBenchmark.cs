using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace GaitWatch.Benchmarks;

/// <summary>
/// What a reader waits for, on the store of a year of 300 cows with everything entered at the chute: the first byte of each page beside
/// that of a file held in memory, its weight without cache, and a year's charts on the screen of a real browser.
/// </summary>
internal static partial class WebBenchmark
{
    private const int Times = 15;
    private const string Bare = "/assets/icon.svg";

    public static async Task RunAsync()
    {
        using var workshop = new Workshop();
        await YearOfCows.RecordAsync(workshop.File("year.ndjson"), withChute: true);
        await ReplayBenchmark.ReplayAsync(workshop);
        var address = new Uri($"http://127.0.0.1:{Workshop.FreePort()}");
        workshop.StartGaitWatch(
            "run", $"--GaitWatch:DataDirectory={workshop.File("data")}", $"--GaitWatch:Http:Urls={address}", $"--GaitWatch:Mqtt:Port={Workshop.FreePort()}", "--Logging:LogLevel:Default=Warning");
        using var client = new HttpClient { BaseAddress = address, Timeout = TimeSpan.FromMinutes(5) };
        await ReadyAsync(client);
        var cow = CowLink().Match(await client.GetStringAsync("/")).Groups[1].Value;
        if (cow.Length == 0)
            cow = CowLink().Match(await client.GetStringAsync("/cows")).Groups[1].Value;

        var name = cow["/cows/".Length..];
        var eid = (await client.GetFromJsonAsync<JsonElement>($"/api/cows/{name}")).GetProperty("eid").GetString()!;
        var table = new FigureTable("page", "first byte, ms", "to a bare file", "after a crossing, ms", "after an entry, ms", "weight, kB", "of it the page");
        var bare = await FirstByteAsync(client, Bare);
        foreach (var route in (string[])["/", "/visits/next", "/recovery", "/herd", "/cows", cow, $"{cow}?days=365", "/platforms"])
        {
            var first = await FirstByteAsync(client, route);
            var (all, page) = await WeightAsync(client, route);
            var crossed = await FirstByteAsync(client, route, () => CrossedAsync(client, name, eid));
            var entered = await FirstByteAsync(client, route, () => EnteredAsync(client, name));
            table.Add(route, Text(first), Text(first / bare), Text(crossed), Text(entered), Text(all / 1000.0), Text(page / 1000.0));
        }

        table.Add(Bare, Text(bare), "1", "", "", "", "");
        table.Write();
        Console.WriteLine();
        var screen = new FigureTable("on screen in Chromium", "ms to the frame that shows it", "of it after the first byte");
        foreach (var (how, open) in new (string, Func<IPage, Task>)[]
        {
            ("a browser that has nothing of the site yet, its process to be started", _ => Task.CompletedTask),
            ("\"1 year\" pressed on her page", async page => await page.GotoAsync(new Uri(address, cow).ToString())),
        })
        {
            // What a browser takes to show anything at all is not the charts'.
            foreach (var (what, route, charts) in new[] { ("the lightest page", "/recovery", 0), ("a year's four charts", $"{cow}?days=365", 4) })
            {
                var (drawn, frame) = await OnScreenAsync(open, new Uri(address, route), charts);
                screen.Add($"{what}: {how}", Text(drawn), Text(frame));
            }
        }

        screen.Write();
    }

    private static async Task ReadyAsync(HttpClient client)
    {
        for (var tries = 0; ; tries++)
        {
            try
            {
                if ((await client.GetAsync("/readyz")).IsSuccessStatusCode)
                    return;
            }
            catch (HttpRequestException) when (tries < 600)
            {
                // Not listening yet.
            }

            if (tries >= 600)
                throw new InvalidOperationException("The service was not ready within a minute.");
            await Task.Delay(100);
        }
    }

    /// <summary>Median of several askings, ms; the first, which compiles and fills caches, is left out.</summary>
    /// <param name="client">Asks.</param>
    /// <param name="route">What for.</param>
    /// <param name="before">Done before each asking, untimed: what changes the state leaves nothing of what was worked out of it.</param>
    private static async Task<double> FirstByteAsync(HttpClient client, string route, Func<Task>? before = null)
    {
        var took = new List<double>();
        for (var i = 0; i <= Times; i++)
        {
            if (before is not null)
                await before();
            var since = Stopwatch.GetTimestamp();
            using var answer = await client.GetAsync(route, HttpCompletionOption.ResponseHeadersRead);
            await using var body = await answer.Content.ReadAsStreamAsync();
            await body.ReadExactlyAsync(new byte[1]);
            if (i > 0)
                took.Add(Stopwatch.GetElapsedTime(since).TotalMilliseconds);
            answer.EnsureSuccessStatusCode();
            await body.CopyToAsync(Stream.Null);
        }

        return took.Order().ElementAt(took.Count / 2);
    }

    // A cow crosses half a minute after the last one did, and the state shows it.
    private static async Task CrossedAsync(HttpClient client, string name, string eid)
    {
        var last = (await client.GetFromJsonAsync<JsonElement>("/api/platforms"))[0];
        var at = last.GetProperty("lastPassageAt").GetDateTimeOffset().AddSeconds(30).UtcDateTime;
        var line = JsonSerializer.Serialize(new
        {
            topic = $"gaitwatch/home/{last.GetProperty("id").GetString()}/passage",
            payload = new { v = 1, id = $"benchmark-{name}-{at.Ticks}", eid, startedAt = at, endedAt = at.AddSeconds(5), loadKg = new { lf = 170.0, rf = 169.0, lh = 141.0, rh = 140.0 } },
        });
        using var body = new StringContent(line + "\n", Encoding.UTF8, "application/x-ndjson");
        using var answer = await client.PostAsync("/api/inputs", body);
        answer.EnsureSuccessStatusCode();
    }

    // Somebody says of a cow where she stands: of all entries the one of which most follows.
    private static async Task EnteredAsync(HttpClient client, string name)
    {
        var known = await client.GetFromJsonAsync<JsonElement>($"/api/cows/{name}");
        using var answer = await client.PutAsJsonAsync($"/api/cows/{name}", new { cow = name, eid = known.GetProperty("eid").GetString(), pen = Guid.NewGuid().ToString("N")[..8] });
        answer.EnsureSuccessStatusCode();
    }

    private static async Task<(long All, long Page)> WeightAsync(HttpClient client, string route)
    {
        var html = await client.GetStringAsync(route);
        long page = Encoding.UTF8.GetByteCount(html);
        var all = page;
        foreach (var asset in Assets().Matches(html).Select(match => match.Groups[1].Value).Distinct())
            all += (await client.GetByteArrayAsync(asset)).Length;
        return (all, page);
    }

    private static async Task<(double Drawn, double AfterFirstByte)> OnScreenAsync(Func<IPage, Task> open, Uri shown, int charts)
    {
        using var playwright = await Playwright.CreateAsync();
        await using var browser = await playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"] });
        var drawn = new List<(double All, double AfterFirst)>();
        for (var i = 0; i <= Times; i++)
        {
            // A context of its own each time: nothing is cached.
            await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 900 } });
            var page = await context.NewPageAsync();
            await page.AddInitScriptAsync(
                "document.addEventListener('DOMContentLoaded', () => requestAnimationFrame(() => requestAnimationFrame(() => { window.shownAt = performance.now(); })));");
            await open(page);
            await page.EvaluateAsync("shown => { location.href = shown; }", shown.ToString());
            await page.WaitForFunctionAsync(
                "([shown, charts]) => location.href === shown && window.shownAt !== undefined && document.querySelectorAll('svg[data-readings]').length >= charts",
                new object[] { shown.ToString(), charts });
            var frame = await page.EvaluateAsync<double>("window.shownAt");
            var first = await page.EvaluateAsync<double>("performance.getEntriesByType('navigation')[0].responseStart");
            if (i > 0)
                drawn.Add((frame, frame - first));
        }

        return (drawn.Select(one => one.All).Order().ElementAt(Times / 2), drawn.Select(one => one.AfterFirst).Order().ElementAt(Times / 2));
    }

    private static string Text(double value) => value.ToString(value < 10 ? "0.0" : "0", CultureInfo.InvariantCulture);

    [GeneratedRegex("href=\"(/cows/[^\"?]+)\"")]
    private static partial Regex CowLink();

    [GeneratedRegex("(?:href|src)=\"(/assets/[^\"]+)\"")]
    private static partial Regex Assets();
}
