using System.Net;
using Microsoft.Playwright;

namespace GaitWatch.Web.Tests;

/// <summary>The chute in a browser where a walk does not lead: a phone that dies, the way back, the drawing by keys.</summary>
public sealed class ChuteWalkTests : IAsyncLifetime
{
    private const float PatienceMs = 60_000;

    private readonly FarmHost _farm = new();
    private readonly List<string> _complaints = [];
    private IPlaywright? _playwright;
    private IBrowser _browser = null!;

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        if (!File.Exists(BrowserFactAttribute.Chromium))
            return;
        await SampleFarm.FillAsync(_farm, days: 40, others: 4);
        using (var visit = await _farm.PutAsync("/api/visits/2026-06-10", new { trimmer = "Anna", places = 12 }))
            Assert.Equal(HttpStatusCode.Created, visit.StatusCode);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = BrowserFactAttribute.Chromium, Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"] });
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
    public async Task What_is_half_entered_survives_a_phone_that_dies_and_the_way_back_goes_a_screen_back()
    {
        var page = await OpenAsync("/visits/next/chute", 360, 800, ColorScheme.Light);
        await TapAsync(page, "Right hind");
        await TapAsync(page, "White line abscess");
        await TapAsync(page, "Moderate");
        // Kept a moment after the tap: a phone that dies before that loses this one tap.
        Assert.True(await page.EvaluateAsync<bool>(
            """
            async () => {
              for (let tries = 0; tries < 600; tries++) {
                if ((await chuteKept.fact("turn /visits/next/chute"))?.draft?.severity === 2) return true;
                await new Promise(resolve => setTimeout(resolve, 50));
              }
              return false;
            }
            """));
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#detail-head")).ToHaveTextAsync("Cow 301, right hind: white line abscess", new() { Timeout = PatienceMs });
        await Assertions.Expect(page.Locator("[data-pick=severity][data-value='2']")).ToHaveAttributeAsync("aria-checked", "true", new() { Timeout = PatienceMs });
        await page.GoBackAsync();
        await Assertions.Expect(page.Locator("#lesion")).ToBeVisibleAsync(new() { Timeout = PatienceMs });
    }

    [BrowserFact]
    public async Task Zones_are_reached_by_keys_and_only_those_that_can_be()
    {
        var page = await OpenAsync("/visits/next/chute", 360, 800, ColorScheme.Light);
        await TapAsync(page, "Left fore");
        await TapAsync(page, "Interdigital hyperplasia");
        await Assertions.Expect(page.Locator("#zone-words")).ToHaveTextAsync("skin between the claws, zone 0. Proposed, tap to change.", new() { Timeout = PatienceMs });
        await page.Locator("#place summary").ClickAsync();
        await page.Locator(".zone[tabindex='0']").FocusAsync();
        foreach (var expected in (string[])["skin between the claws, in front, zone 9", "cleft between the claws, at the heel, zone 10", "skin between the claws, zone 0"])
        {
            await page.Keyboard.PressAsync("ArrowDown");
            await Assertions.Expect(page.Locator("#zone-words")).ToHaveTextAsync(expected, new() { Timeout = PatienceMs });
        }

        // The drawing is folded away where the lesion tells the place; on a left foot seen from behind the outer claw is on the left.
        Assert.Equal(["Outer claw, left", "Inner claw, right"], await page.Locator(".foot-names b").AllInnerTextsAsync());
    }

    // By mouse: a touch held too long on a busy machine is a long press to the browser, and does nothing.
    private static Task TapAsync(IPage page, string name) =>
        page.Locator("button:visible", new() { HasText = name }).First.ClickAsync();

    private async Task<IPage> OpenAsync(string route, int width, int height, ColorScheme scheme)
    {
        var context = await _browser.NewContextAsync(new() { ViewportSize = new() { Width = width, Height = height }, HasTouch = true, ColorScheme = scheme, BaseURL = _farm.Http.BaseAddress!.ToString(), Locale = "en-GB" });
        context.SetDefaultTimeout(PatienceMs);
        context.SetDefaultNavigationTimeout(PatienceMs);
        // The phone's clock shows what the farm's shows.
        await context.Clock.SetFixedTimeAsync(Some.Now.UtcDateTime);
        var page = await context.NewPageAsync();
        page.PageError += (_, error) => _complaints.Add($"{route}: {error}");
        page.Console += (_, message) =>
        {
            if (message.Type is "error" or "warning")
                _complaints.Add($"{route}: {message.Text}");
        };
        var response = await page.GotoAsync(route);
        Assert.True(response!.Ok, $"{route}: {response.Status}");
        return page;
    }
}
