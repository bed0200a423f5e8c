using Microsoft.Playwright;

namespace GaitWatch.Web.Tests;

/// <summary>The pages as a browser shows them: on a phone of 360 by 800, by touch, by keyboard, without script.</summary>
public sealed class BrowserTests : IAsyncLifetime
{
    private const float PatienceMs = 120_000;
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
    public async Task Five_cows_stand_on_one_phone_screen_and_everything_to_touch_is_large_enough_for_gloves()
    {
        var page = await PhoneAsync("/");
        var cards = await page.Locator(".flag").AllAsync();
        var fifth = await cards[4].BoundingBoxAsync();
        Assert.True(fifth!.Y + fifth.Height <= 800, $"the fifth cow ends at {fifth.Y + fifth.Height}");
        foreach (var target in await page.Locator("a:not(.skip):visible, button:visible, summary:visible").AllAsync())
        {
            var box = await target.BoundingBoxAsync();
            Assert.True(box!.Height >= 44 && box.Width >= 44, $"{await target.InnerTextAsync()}: {box.Width} x {box.Height}");
        }

        Assert.Empty(_complaints);
    }

    [BrowserFact]
    public async Task No_page_is_wider_than_a_phone_and_no_browser_has_anything_to_complain_of()
    {
        foreach (var route in (string[])["/", "/visits/next", "/recovery", "/herd", "/cows", "/cows/417", "/cows/417?days=365", "/platforms"])
        {
            var page = await PhoneAsync(route);
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= 360, route);
        }

        Assert.Empty(_complaints);
    }

    [BrowserFact]
    public async Task A_chart_is_read_by_pointer_and_by_keys()
    {
        var page = await PhoneAsync("/cows/417");
        var chart = page.Locator("figure.chart-rh");
        var read = chart.Locator("output");
        var newest = await read.InnerTextAsync();
        Assert.StartsWith("10 Jun: ", newest, StringComparison.Ordinal);
        await chart.Locator("svg").FocusAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        Assert.StartsWith("9 Jun: ", await read.InnerTextAsync(), StringComparison.Ordinal);
        await page.Keyboard.PressAsync("Home");
        Assert.StartsWith("1 May: ", await read.InnerTextAsync(), StringComparison.Ordinal);
        await chart.Locator("svg").HoverAsync(new() { Position = new() { X = 170, Y = 60 } });
        Assert.Matches("^1[01] May: ", await read.InnerTextAsync());
        await page.Mouse.MoveAsync(1, 1);
        Assert.Equal(newest, await read.InnerTextAsync());
    }

    [BrowserFact]
    public async Task A_flag_is_closed_in_two_taps_without_script()
    {
        var page = await PhoneAsync("/", script: false);
        var flag = page.Locator(".flag", new() { Has = page.Locator(".flag-number", new() { HasTextRegex = new("^87$") }) });
        await flag.GetByLabel("Close the flag of cow 87").ClickAsync();
        await Assertions.Expect(flag.Locator("details")).ToHaveAttributeAsync("open", "", new() { Timeout = PatienceMs });
        var answer = await page.RunAndWaitForResponseAsync(
            () => flag.GetByRole(AriaRole.Button, new() { Name = "Seen walking sound" }).ClickAsync(), response => response.Request.Method == "POST");
        Assert.Equal(303, answer.Status);
        await page.WaitForURLAsync("**/?closed=*");
        Assert.Contains("Cow 87: flag closed (Left hind).", await page.GetByRole(AriaRole.Status).InnerTextAsync(), StringComparison.Ordinal);
        Assert.DoesNotContain("87", await page.Locator(".flag-number").AllInnerTextsAsync());
    }

    private async Task<IPage> PhoneAsync(string route, bool script = true)
    {
        var context = await _browser.NewContextAsync(new()
        {
            ViewportSize = new() { Width = 360, Height = 800 }, HasTouch = true, JavaScriptEnabled = script, BaseURL = _farm.Http.BaseAddress!.ToString(),
        });
        // How long a browser takes on a busy machine is not what is tested here.
        context.SetDefaultTimeout(PatienceMs);
        context.SetDefaultNavigationTimeout(PatienceMs);
        var page = await context.NewPageAsync();
        page.Console += (_, message) => _complaints.Add($"{route}: {message.Text}");
        page.PageError += (_, error) => _complaints.Add($"{route}: {error}");
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(_farm.Http.BaseAddress!.ToString(), StringComparison.Ordinal))
                _complaints.Add($"{route} asks for {request.Url}");
        };
        var response = await page.GotoAsync(route);
        Assert.True(response!.Ok, $"{route}: {response.Status}");
        return page;
    }
}
