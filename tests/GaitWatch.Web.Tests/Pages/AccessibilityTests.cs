using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace GaitWatch.Web.Tests;

/// <summary>
/// What axe finds on the pages (axe-core's rules for WCAG 2, run in a real browser), in light and dark, on a phone and on a wide screen.
/// </summary>
public sealed class AccessibilityTests : IAsyncLifetime
{
    private const float PatienceMs = 120_000;
    private readonly FarmHost _farm = new();
    private IPlaywright? _playwright;
    private IBrowser _browser = null!;

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        if (!File.Exists(BrowserFactAttribute.Chromium))
            return;
        await SampleFarm.FillAsync(_farm, days: 40, others: 4);
        using var planned = await _farm.PutAsync("/api/visits/2026-06-12", new { trimmer = "Anna", places = 4 });
        using var found = await _farm.PostAsync("/api/cows/417/findings", new
        {
            id = "f1", at = Some.Now.AddDays(-4), foot = "rh", claw = "outer", zone = 4, lesion = "SU", severity = 2, actions = new[] { "trimmed", "wrap", "block" }, blockClaw = "inner",
        });
        Assert.True(planned.IsSuccessStatusCode && found.IsSuccessStatusCode);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = BrowserFactAttribute.Chromium, Args = ["--no-sandbox", "--disable-gpu"] });
    }

    public async Task DisposeAsync()
    {
        if (_playwright is not null)
        {
            await _browser.DisposeAsync();
            _playwright.Dispose();
        }

        await _farm.DisposeAsync();
    }

    [BrowserFact]
    public async Task No_page_has_a_serious_fault()
    {
        var passage = (string)(await _farm.ListAsync("/api/cows/417/passages"))[0]!["id"]!;
        var faults = new List<string>();
        foreach (var (width, scheme) in ((int, ColorScheme)[])[(360, ColorScheme.Light), (1280, ColorScheme.Dark)])
        {
            await using var context = await _browser.NewContextAsync(new()
            {
                ViewportSize = new() { Width = width, Height = 800 }, ColorScheme = scheme, BaseURL = _farm.Http.BaseAddress!.ToString(),
            });
            context.SetDefaultTimeout(PatienceMs);
            var page = await context.NewPageAsync();
            foreach (var route in (string[])["/", "/visits/next", "/recovery", "/herd", "/cows", "/cows/417", $"/passages/{Uri.EscapeDataString(passage)}", "/platforms"])
            {
                var answer = await page.GotoAsync(route);
                Assert.True(answer!.Ok, $"{route}: {answer.Status}");
                var result = await page.RunAxe();
                // That rules ran at all is known from those that passed.
                Assert.NotEmpty(result.Passes);
                faults.AddRange(result.Violations.Where(rule => rule.Impact is "serious" or "critical")
                    .Select(rule => $"{route} {width} {scheme}: {rule.Id}: {rule.Help} {string.Join("; ", rule.Nodes.Take(3).Select(node => node.Html))}"));
            }
        }

        Assert.Empty(faults);
    }
}
