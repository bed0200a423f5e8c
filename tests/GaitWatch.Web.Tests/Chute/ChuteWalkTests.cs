using System.Net;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace GaitWatch.Web.Tests;

/// <summary>The trimmer's two moments, walked in a browser on a phone and on a wide screen: the evening before with the list, and at the chute.</summary>
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
        // What the last visit left: a block to come off, and skin to be looked at again.
        await FoundAsync("301", new { id = "e1", at = "2026-04-20T08:00:00Z", foot = "rh", claw = "outer", zone = 4, lesion = "SHC", severity = 1, actions = new[] { "trimmed" } });
        await FoundAsync("500", new { id = "e2", at = "2026-05-13T08:00:00Z", foot = "lh", claw = "outer", zone = 3, lesion = "WLA", severity = 2, actions = new[] { "trimmed", "loose-horn-removed", "block" }, blockClaw = "inner", blockMaterial = "wood" });
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

    [BrowserTheory]
    [InlineData(360, 800, ColorScheme.Light)]
    [InlineData(1280, 800, ColorScheme.Dark)]
    public async Task At_the_chute_each_screen_can_be_tapped_with_gloves_and_says_what_it_is(int width, int height, ColorScheme scheme)
    {
        var page = await OpenAsync("/visits/next/chute", width, height, scheme);
        await page.Locator("body[data-offline=ready]").WaitForAsync();
        await CheckAsync(page, "chute-cow", width);

        await TapAsync(page, "Right hind");
        await CheckAsync(page, "chute-lesion", width);
        await TapAsync(page, "Sole ulcer");
        await TapAsync(page, "Severe");
        await TapAsync(page, "Loose horn off");
        await TapAsync(page, "Block on inner claw");
        await TapAsync(page, "Wrap on");
        Assert.Equal("true", await page.Locator(".zone[data-zone='4'][data-side='right']").GetAttributeAsync("aria-checked"));
        Assert.Equal(["Wrap off: Sat 13 Jun, at the latest Mon 15 Jun", "Look at the block: Mon 15 Jun to Sun 21 Jun"], (await page.Locator("#again li").AllInnerTextsAsync()).Take(2));
        await CheckAsync(page, "chute-detail", width);
        await page.Locator("#place summary").ClickAsync();
        await page.Locator("#place").ScrollIntoViewIfNeededAsync();
        await CheckAsync(page, "chute-place", width);
        await page.Locator("#place summary").ClickAsync();

        // A block on the sore claw is warned of at once.
        await TapAsync(page, "Block on outer claw");
        Assert.Equal("The block is on the outer claw, which has a lesion. It belongs on the sound claw.", await page.Locator("#warnings li").InnerTextAsync());
        await TapAsync(page, "Pain relief");
        Assert.Contains("A medicine without a withdrawal date", await page.Locator("#warnings").InnerTextAsync(), StringComparison.Ordinal);
        await CheckAsync(page, "chute-warned", width);
        await TapAsync(page, "Keep, another foot");
        await page.Locator("#waiting", new() { HasText = "All sent" }).WaitForAsync();
        // Warned of, and kept all the same; the farm says it too.
        var kept = Assert.Single(await _farm.ListAsync("/api/findings?from=2026-06-10"))!;
        Assert.Equal(["unsafe-block", "no-withdrawal-date"], kept["warnings"]!.AsArray().Select(warning => (string)warning!["kind"]!));
        await CheckAsync(page, "chute-foot-kept", width);

        await TapAsync(page, "The other feet trimmed, nothing found");
        await page.Locator("#cow-number", new() { HasText = "417" }).WaitForAsync();
        await page.Locator("#waiting", new() { HasText = "All sent" }).WaitForAsync();
        Assert.Equal(4, (await _farm.ListAsync("/api/findings?from=2026-06-10&cow=301")).Count);
        await TapAsync(page, "All sent");
        await CheckAsync(page, "chute-kept", width);
        await page.Locator("#kept .back").ClickAsync();
        await TapAsync(page, "Another cow");
        await page.Locator("[data-key='5']").ClickAsync();
        await page.Locator("[data-key='0']").ClickAsync();
        await CheckAsync(page, "chute-find", width);
        await TapAsync(page, "500, pen 1");
        Assert.Contains("Block on the inner claw, left hind, since Wed 13 May", await page.Locator("#cow-facts").InnerTextAsync(), StringComparison.Ordinal);
        await TapAsync(page, "When to call the veterinarian");
        await CheckAsync(page, "chute-care", width);
        if (width < 1000)
        {
            await page.Locator("#care .back").ClickAsync();
            await TapAsync(page, "The whole list");
            await CheckAsync(page, "chute-list", width);
        }

        Assert.Empty(_complaints);
    }

    [BrowserTheory]
    [InlineData(360, 800)]
    [InlineData(1280, 800)]
    public async Task The_evening_before_the_link_opens_the_list_and_its_print_and_leads_to_the_chute(int width, int height)
    {
        var share = await OpenAsync("/visits/next/share", width, height, ColorScheme.Light);
        await CheckAsync(share, "share", width, smallest: 44);
        var address = await share.Locator("#share-link").InputValueAsync();
        var list = await OpenAsync(new Uri(address).AbsolutePath, width, height, ColorScheme.Light);
        Assert.Equal("301", await list.Locator(".share-cow").First.InnerTextAsync());
        await CheckAsync(list, "share-list", width, smallest: 44);
        await list.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.False(await list.Locator(".share-chute").IsVisibleAsync());
        Assert.True(await list.Locator(".sheet").First.IsVisibleAsync());
        await list.EmulateMediaAsync(new() { Media = Media.Screen });
        await list.Locator(".share-chute").ClickAsync();
        await list.Locator("body[data-offline=ready]").WaitForAsync();
        Assert.Equal("301", await list.Locator("#cow-number").InnerTextAsync());
        Assert.Empty(_complaints);
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
        Assert.Equal("true", await page.Locator("[data-pick=severity][data-value='2']").GetAttributeAsync("aria-checked"));
        await page.GoBackAsync();
        Assert.True(await page.Locator("#lesion").IsVisibleAsync());
    }

    [BrowserFact]
    public async Task Zones_are_reached_by_keys_and_only_those_that_can_be()
    {
        var page = await OpenAsync("/visits/next/chute", 360, 800, ColorScheme.Light);
        await TapAsync(page, "Left fore");
        await TapAsync(page, "Interdigital hyperplasia");
        Assert.Equal("skin between the claws, zone 0. Proposed, tap to change.", await page.Locator("#zone-words").InnerTextAsync());
        await page.Locator("#place summary").ClickAsync();
        await page.Locator(".zone[tabindex='0']").FocusAsync();
        foreach (var expected in (string[])["skin between the claws, in front, zone 9", "cleft between the claws, at the heel, zone 10", "skin between the claws, zone 0"])
        {
            await page.Keyboard.PressAsync("ArrowDown");
            Assert.Equal(expected, await page.Locator("#zone-words").InnerTextAsync());
        }

        // The drawing is folded away where the lesion tells the place; on a left foot seen from behind the outer claw is on the left.
        Assert.Equal(["Outer claw, left", "Inner claw, right"], await page.Locator(".foot-names b").AllInnerTextsAsync());
    }

    private async Task FoundAsync(string cow, object finding)
    {
        using var taken = await _farm.PostAsync($"/api/cows/{cow}/findings", finding);
        Assert.Equal(HttpStatusCode.Created, taken.StatusCode);
    }

    // By mouse: a touch held too long on a busy machine is a long press to the browser, and does nothing.
    private static Task TapAsync(IPage page, string name) =>
        page.Locator("button:visible", new() { HasText = name }).First.ClickAsync();

    private static async Task CheckAsync(IPage page, string name, int width, int smallest = 56)
    {
        Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width, $"{name} is wider than the screen");
        var small = await page.EvaluateAsync<string[]>(
            """
            smallest => [...document.querySelectorAll("a:not(.skip), button, summary, input, .zone path")]
              .filter(target => target.checkVisibility()).map(target => ({ target, box: target.getBoundingClientRect() }))
              .filter(({ target, box }) => Math.round(box.width) < smallest || Math.round(box.height) < smallest)
              .map(({ target, box }) => `${target.textContent.trim()} ${target.parentNode.dataset?.zone ?? ""}: ${box.width} x ${box.height}`)
            """,
            smallest);
        Assert.True(small.Length == 0, $"{name}: {string.Join("; ", small)}");
        // axe-core's rules for WCAG 2; that they ran at all is known from those that passed.
        var axe = await page.RunAxe();
        Assert.NotEmpty(axe.Passes);
        var faults = axe.Violations.Where(rule => rule.Impact is "serious" or "critical").Select(rule => $"{rule.Id}: {rule.Help} {string.Join("; ", rule.Nodes.Take(3).Select(node => node.Html))}").ToArray();
        Assert.True(faults.Length == 0, $"{name}: {string.Join("\n", faults)}");
        await Screenshots.TakeAsync(page, $"{name}-{(width < 1000 ? "phone" : "desktop")}");
    }

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
