using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>The herd manager's morning and the look back weeks later, in a real browser on the demo barn, on a phone and at a desk.</summary>
[Collection(DemoGroup.Name)]
public sealed class ManagerTests(DemoOnScreen barn)
{
    [Theory]
    [InlineData(360)]
    [InlineData(1280)]
    public async Task The_morning_goes_from_the_list_to_the_reason_and_a_flag_is_closed(int width)
    {
        var page = await barn.OpenAsync(width);
        await page.GotoAsync("/");
        await DemoOnScreen.PictureAsync(page, "morning");
        await NotWiderThanAsync(page, width);

        // Five cows at a glance, a platform's trouble above them or not: nothing of them lies below the screen or under the bar at its foot.
        var inSight = await page.EvaluateAsync<int>(
            """
            () => {
                const bar = document.querySelector('header.bar nav').getBoundingClientRect();
                const foot = bar.top > innerHeight / 2 ? bar.top : innerHeight;
                return [...document.querySelectorAll('.flag')].filter(flag => flag.getBoundingClientRect().bottom <= foot).length;
            }
            """);
        Assert.True(inSight >= Math.Min(5, await page.Locator(".flag").CountAsync()), $"Only {inSight} cows are in sight.");

        // Which cow, which leg, how much, since when: said in words on the first card.
        var card = page.Locator(".flag").First;
        var cow = await card.Locator(".flag-number").InnerTextAsync();
        Assert.Matches("(Left|Right) (fore|hind)|Both (fore|hind)", await card.Locator(".flag-leg").InnerTextAsync());
        Assert.Matches(@"\d+\s%\sless weight, (for \d+\sdays|since)", await card.Locator(".flag-drop").InnerTextAsync());
        Assert.Contains("false flag", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        // Why: her own page, with the leg against her own normal.
        await card.Locator(".flag-cow").ClickAsync();
        await page.WaitForURLAsync($"**/cows/{Uri.EscapeDataString(cow)}");
        await DemoOnScreen.PictureAsync(page, "cow", 1250);
        await NotWiderThanAsync(page, width);
        Assert.Contains("less than is normal for her", await page.Locator(".cow-flag").First.InnerTextAsync(), StringComparison.Ordinal);
        var chart = page.Locator("figure.chart-sore").First;
        await chart.Locator("svg").FocusAsync();
        await page.Keyboard.PressAsync("Home");
        Assert.Matches(@"normal \d", await chart.Locator("output").InnerTextAsync());
        await page.GetByRole(AriaRole.Link, new() { Name = "1 year" }).ClickAsync();
        await page.WaitForURLAsync("**days=365");
        await DemoOnScreen.PictureAsync(page, "cow-year", 1250);

        // A crossing opens to its figures.
        await page.Locator("section[aria-labelledby=passages] a").First.ClickAsync();
        await page.WaitForURLAsync("**/passages/**");
        Assert.Contains("Force under each foot", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        // One of today's, whose samples are kept, to the force under each foot.
        var today = JsonDocument.Parse(await barn.Client.GetStringAsync($"api/passages?quality=accepted&from={DateTime.UtcNow.AddHours(-2):yyyy-MM-dd'T'HH:mm:ss'Z'}")).RootElement;
        var newest = today.EnumerateArray().Last(passage => passage.GetProperty("speedMetresPerSecond").ValueKind == JsonValueKind.Number).GetProperty("id").GetString()!;
        await page.GotoAsync($"/passages/{Uri.EscapeDataString(newest)}");
        await DemoOnScreen.PictureAsync(page, "crossing", 1100);
        await NotWiderThanAsync(page, width);
        Assert.True(await page.Locator(".chart-force").CountAsync() >= 4);

        // Seen walking sound: closed in one tap with the reason, and gone from the list.
        await page.GotoAsync("/");
        var last = page.Locator(".flag").Last;
        var closed = await last.Locator(".flag-number").InnerTextAsync();
        var flagsBefore = await page.Locator(".flag-number").AllInnerTextsAsync();
        await last.Locator("summary").ClickAsync();
        await last.GetByRole(AriaRole.Button, new() { Name = "Seen walking sound" }).ClickAsync();
        await page.WaitForURLAsync("**/?closed=*");
        // It stays to be read, though a cow that crosses in the same second has the list drawn anew.
        await Assertions.Expect(page.GetByRole(AriaRole.Status).First).ToContainTextAsync($"Cow {closed}: flag closed");
        Assert.Equal(flagsBefore.Count(number => number == closed) - 1, (await page.Locator(".flag-number").AllInnerTextsAsync()).Count(number => number == closed));

        // Do the platforms tell the truth?
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Pages" }).GetByRole(AriaRole.Link, new() { Name = "Platforms" }).ClickAsync();
        await page.WaitForURLAsync("**/platforms");
        await DemoOnScreen.PictureAsync(page, "platforms", 1000);
        await NotWiderThanAsync(page, width);
        Assert.Contains("Last crossing", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Empty(barn.Complaints);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(1280)]
    public async Task Weeks_later_the_treated_feet_stand_side_by_side_those_that_stand_still_first(int width)
    {
        var page = await barn.OpenAsync(width);
        await page.GotoAsync("/recovery");
        await DemoOnScreen.PictureAsync(page, "recovery", 1250);
        await NotWiderThanAsync(page, width);
        var feet = page.Locator("article.recovery");
        Assert.True(await feet.CountAsync() > 0, "No treated foot is open in the demo barn.");
        var ranks = (await feet.EvaluateAllAsync<string[]>("feet => feet.map(foot => foot.className)"))
            .Select(name => Array.FindIndex(["worse", "stalled", "too-early", "recovering"], status => name.Contains($"recovery-{status}", StringComparison.Ordinal))).ToArray();
        Assert.Equal(ranks.Order(), ranks);
        var cow = await feet.First.Locator(".recovery-cow").InnerTextAsync();
        await feet.First.Locator("svg").FocusAsync();
        await page.Keyboard.PressAsync("End");
        Assert.Matches(@"\d+ \w{3}: \d", await feet.First.Locator("output").InnerTextAsync());
        await feet.First.Locator(".recovery-cow").ClickAsync();
        await page.WaitForURLAsync($"**/cows/{Uri.EscapeDataString(cow)}");
        Assert.Contains("Treated feet", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Contains("What happened to her feet", await page.Locator("main").InnerTextAsync(), StringComparison.Ordinal);

        // Any other cow is found in the herd.
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Pages" }).GetByRole(AriaRole.Link, new() { Name = "Cows" }).ClickAsync();
        await page.WaitForURLAsync("**/cows");
        await DemoOnScreen.PictureAsync(page, "cows");
        await NotWiderThanAsync(page, width);

        // Over a year: better or not, where, what was found, what works.
        await page.GotoAsync("/herd");
        await DemoOnScreen.PictureAsync(page, "herd", 1250);
        await NotWiderThanAsync(page, width);
        var herd = await page.Locator("main").InnerTextAsync();
        foreach (var heading in (string[])["Month by month", "Were the flags true?", "Where trouble came", "What works here"])
            Assert.Contains(heading, herd, StringComparison.Ordinal);
        Assert.Empty(barn.Complaints);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(1280)]
    public async Task A_list_is_planned_ticked_put_in_order_and_fits_the_paper(int width)
    {
        var page = await barn.OpenAsync(width);
        await page.GotoAsync("/visits/next");
        if (await page.Locator(".trim-tick").CountAsync() == 0)
        {
            await page.Locator("#plan-date").FillAsync(DateTime.UtcNow.AddDays(2).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture));
            await page.Locator("#plan-trimmer").FillAsync("Anna");
            await page.Locator("#plan-trimmer").PressAsync("Enter");
            await page.WaitForURLAsync(new Regex(@"/visits/\d{4}-\d\d-\d\d$"));
        }

        await DemoOnScreen.PictureAsync(page, "list", 1000);
        await NotWiderThanAsync(page, width);
        var numbers = await page.Locator(".trim-number").AllInnerTextsAsync();
        // What is to be read has the width of the page, beside the picture and the tick.
        // Measured in the page's own turn: a live page may be drawn anew between finding a row and asking for its box.
        var words = await page.EvaluateAsync<double>("document.querySelector('.trim-what').getBoundingClientRect().width");
        Assert.True(words > 0.45 * Math.Min(width, 616), $"The words about a cow are {words} wide.");
        Assert.True(numbers.Count >= 2, "The demo's list has fewer than two cows.");

        // Ticked here, seen by whoever opens the list elsewhere.
        var untick = page.Locator(".trim-tick button[aria-pressed=false]").First;
        await untick.ClickAsync();
        await page.Locator(".trim-tick button[aria-pressed=true]").First.WaitForAsync();
        var other = await barn.OpenAsync(width);
        await other.GotoAsync("/visits/next");
        Assert.True(await other.Locator(".trim-tick button[aria-pressed=true]").CountAsync() >= 1);

        // The second comes before the first, and stays there.
        await page.Locator(".trim-change summary").Nth(1).ClickAsync();
        await page.Locator(".trim-change").Nth(1).GetByRole(AriaRole.Button, new() { Name = "One up" }).ClickAsync();
        await page.WaitForFunctionAsync("first => document.querySelector('.trim-number').textContent !== first", numbers[0]);
        await other.ReloadAsync();
        Assert.Equal(numbers[1], await other.Locator(".trim-number").First.InnerTextAsync());

        // On paper: a page for twenty cows. Chromium writes one object of type Page for each page of a PDF.
        var onList = JsonDocument.Parse(await barn.Client.GetStringAsync("api/trim-list")).RootElement.EnumerateArray().Count(row => row.GetProperty("hasPlace").GetBoolean());
        var pdf = System.Text.Encoding.Latin1.GetString(await page.PdfAsync(new() { PreferCSSPageSize = true }));
        Assert.Equal((onList + 19) / 20, Regex.Count(pdf, @"/Type\s*/Page\b(?!s)"));
        Assert.Empty(barn.Complaints);
    }

    [Fact]
    public async Task A_crossing_appears_on_an_open_page_without_reloading()
    {
        var page = await barn.OpenAsync(1280);
        await page.GotoAsync("/platforms");
        await page.EvaluateAsync("window.unreloaded = true");
        var before = await page.Locator("footer time").GetAttributeAsync("datetime");
        // The demo's cows cross as one watches.
        await page.WaitForFunctionAsync("then => document.querySelector('footer time').getAttribute('datetime') !== then", before, new() { Timeout = 180_000 });
        Assert.True(await page.EvaluateAsync<bool>("window.unreloaded === true"));
        Assert.Empty(barn.Complaints);
    }

    private static async Task NotWiderThanAsync(IPage page, int width)
    {
        if (await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width)
            return;
        // What scrolls by itself is not what widens the page.
        var reaching = await page.EvaluateAsync<string>(
            """
            width => [...document.querySelectorAll('body *')].filter(each => each.getBoundingClientRect().right > width).filter(each => {
                for (let above = each.parentElement; above !== document.body && above; above = above.parentElement)
                    if (getComputedStyle(above).overflowX !== 'visible') return false;
                return true;
            }).map(each => `${each.tagName}.${each.className?.baseVal ?? each.className} to ${each.getBoundingClientRect().right}: ${each.textContent.trim().slice(0, 40)}`).slice(0, 5).join('; ')
            """,
            width);
        Assert.Fail($"{page.Url} is wider than {width}: {reaching}");
    }
}
