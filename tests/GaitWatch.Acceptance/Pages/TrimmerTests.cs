using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>
/// The trimmer's two moments in a real browser on the demo barn, on a phone and on a wide screen: the evening before with the list that a
/// link opens, and at the chute, with and without network.
/// </summary>
[Collection(DemoGroup.Name)]
public sealed class TrimmerTests(DemoOnScreen barn)
{
    private const float PatienceMs = 120_000;

    [Theory]
    [InlineData(360)]
    [InlineData(1280)]
    public async Task The_evening_before_the_link_opens_the_list_and_its_print_and_leads_to_the_chute(int width)
    {
        var share = await barn.OpenAsync(width);
        await share.GotoAsync("/visits/next/share");
        await LookAsync(share, "share", smallest: 44);
        var address = await share.Locator("#share-link").InputValueAsync();

        // How many cows, in what order, which leg first, what was done before.
        var list = await barn.OpenAsync(width);
        await list.GotoAsync(new Uri(address).AbsolutePath);
        var rows = await ListAsync("api/trim-list");
        Assert.Equal(rows.Select(row => row.GetProperty("cow").GetString()!), await list.Locator(".share-cow").AllInnerTextsAsync());
        var words = await list.Locator("main").InnerTextAsync();
        Assert.Matches(@"(Left|Right) (fore|hind) first", words);
        Assert.Matches("Last|last", words);
        Assert.Contains("Lift both hind feet", words, StringComparison.Ordinal);
        await LookAsync(list, "share-list", smallest: 44);

        // On paper: the sheets, and nothing to press.
        await list.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.False(await list.Locator(".share-chute").IsVisibleAsync());
        Assert.True(await list.Locator(".sheet").First.IsVisibleAsync());
        await list.EmulateMediaAsync(new() { Media = Media.Screen });

        // To the chute, where the same cows stand in the same order.
        await list.Locator(".share-chute").ClickAsync();
        await list.Locator("body[data-offline=ready]").WaitForAsync();
        Assert.Contains(await CowThereAsync(list), rows.Select(row => row.GetProperty("cow").GetString()!));
        Assert.Empty(barn.Complaints);
    }

    [Theory]
    [InlineData(360, ColorScheme.Light)]
    [InlineData(1280, ColorScheme.Dark)]
    public async Task At_the_chute_each_screen_can_be_pressed_with_gloves_and_says_what_it_is(int width, ColorScheme scheme)
    {
        var page = await barn.OpenAsync(width, scheme);
        await ToChuteAsync(page);
        await LookAsync(page, "chute-cow");
        var other = await SoundCowAsync(except: []);

        // A cow that is not on the list, by her number.
        await PressAsync(page, "Another cow");
        foreach (var digit in other)
            await page.Locator($"[data-key='{digit}']").ClickAsync();
        await LookAsync(page, "chute-find");
        await page.Locator($"#matches button[data-cow='{other}']").ClickAsync();
        await Assertions.Expect(page.Locator("#cow-number")).ToHaveTextAsync(other, Patience);

        // Foot, lesion, how bad, what was done; the place is proposed and shown on the drawing.
        await PressAsync(page, "Right hind");
        await LookAsync(page, "chute-lesion");
        foreach (var press in (string[])["Sole ulcer", "Severe", "Loose horn off", "Block on inner claw", "Wrap on"])
            await PressAsync(page, press);
        await Assertions.Expect(page.Locator(".zone[data-zone='4'][data-side='right']")).ToHaveAttributeAsync("aria-checked", "true", new() { Timeout = PatienceMs });
        var again = await page.Locator("#again li").AllInnerTextsAsync();
        Assert.Matches(@"^Wrap off: \w{3} \d+ \w{3}, at the latest \w{3} \d+ \w{3}$", again[0]);
        Assert.Matches(@"^Look at the block: \w{3} \d+ \w{3} to \w{3} \d+ \w{3}$", again[1]);
        await LookAsync(page, "chute-detail");
        await page.Locator("#place summary").ClickAsync();
        await page.Locator("#place").ScrollIntoViewIfNeededAsync();
        await LookAsync(page, "chute-place");
        await page.Locator("#place summary").ClickAsync();

        // A block on the sore claw, and a medicine without a date, are warned of at once; kept all the same, and said by the farm too.
        await PressAsync(page, "Block on outer claw");
        await Assertions.Expect(page.Locator("#warnings li")).ToHaveTextAsync("The block is on the outer claw, which has a lesion. It belongs on the sound claw.", new() { Timeout = PatienceMs });
        await PressAsync(page, "Pain relief");
        await Assertions.Expect(page.Locator("#warnings")).ToContainTextAsync("A medicine without a withdrawal date", new() { Timeout = PatienceMs });
        await page.Locator("#warnings").ScrollIntoViewIfNeededAsync();
        await LookAsync(page, "chute-warned");
        await PressAsync(page, "Keep, another foot");
        await SentAsync(page);
        var kept = Assert.Single(await FoundTodayAsync(other));
        Assert.Equal(["unsafe-block", "no-withdrawal-date"], kept.GetProperty("warnings").EnumerateArray().Select(warning => warning.GetProperty("kind").GetString()!));

        // One press for the other feet; the next cow stands there.
        await PressAsync(page, "The other feet trimmed, nothing found");
        var four = await Until.AsyncOf("findings of all four feet", () => FoundTodayAsync(other), found => found.Length == 4);
        Assert.Equal(["lf", "lh", "rf", "rh"], four.Select(finding => finding.GetProperty("foot").GetString()!).Order(StringComparer.Ordinal));
        await Assertions.Expect(page.Locator("#cow-number")).Not.ToHaveTextAsync(other, Patience);
        await SentAsync(page);
        await PressAsync(page, "All sent");
        await LookAsync(page, "chute-kept");
        await page.Locator("#kept .back").ClickAsync();
        await PressAsync(page, "When to call the veterinarian");
        await LookAsync(page, "chute-care");
        if (width < 1000)
        {
            await page.Locator("#care .back").ClickAsync();
            await PressAsync(page, "The whole list");
            await LookAsync(page, "chute-list");
        }

        Assert.Empty(barn.Complaints);
    }

    [Theory]
    [InlineData(360)]
    [InlineData(1280)]
    public async Task Without_network_the_work_goes_on_and_everything_is_sent_once_when_it_is_back(int width)
    {
        var page = await barn.OpenAsync(width);
        await ToChuteAsync(page);
        var first = await CowThereAsync(page);
        var cow = await SoundCowAsync(except: [first]);
        var before = (await ListAsync("api/findings")).Length;

        await page.Context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("#cow-number")).ToHaveTextAsync(first, Patience);
        await PressAsync(page, "Another cow");
        foreach (var digit in cow)
            await page.Locator($"[data-key='{digit}']").ClickAsync();
        await page.Locator($"#matches button[data-cow='{cow}']").ClickAsync();
        foreach (var press in (string[])["Left hind", "White line abscess", "Moderate", "Keep, another foot"])
            await PressAsync(page, press);
        await Assertions.Expect(page.Locator("#waiting")).ToHaveTextAsync("1 waits", Patience);
        await PressAsync(page, "The other feet trimmed, nothing found");
        await Assertions.Expect(page.Locator("#waiting")).ToHaveTextAsync("4 wait", Patience);
        await DemoOnScreen.PictureAsync(page, "chute-offline");
        await page.Locator("#undo").ClickAsync();
        await Assertions.Expect(page.Locator("#waiting")).ToHaveTextAsync("1 waits", Patience);
        Assert.Equal(before, (await ListAsync("api/findings")).Length);

        await page.Context.SetOfflineAsync(false);
        await SentAsync(page);
        var sent = Assert.Single(await FoundTodayAsync(cow));
        Assert.Equal("lh WLA 2", $"{sent.GetProperty("foot")} {sent.GetProperty("lesion")} {sent.GetProperty("severity")}");
        Assert.Equal(before + 1, (await ListAsync("api/findings")).Length);

        // Taken back after it was sent, it is taken back at the farm.
        await page.Locator("#waiting").ClickAsync();
        await page.Locator("#entries [data-state=sent] [data-undo]").First.ClickAsync();
        await Until.AsyncOf("the finding to be taken back", () => FoundTodayAsync(cow), found => found.Length == 0);
        // That there is no network a browser says for every request: that is what is tested.
        barn.Complaints.RemoveAll(complaint => complaint.Contains("ERR_INTERNET_DISCONNECTED", StringComparison.Ordinal));
        Assert.Empty(barn.Complaints);
    }

    // The page opens before its script has read what the phone keeps.
    private static async Task<string> CowThereAsync(IPage page)
    {
        await Assertions.Expect(page.Locator("#cow-number")).Not.ToBeEmptyAsync(new() { Timeout = PatienceMs });
        return await page.Locator("#cow-number").InnerTextAsync();
    }

    private static LocatorAssertionsToHaveTextOptions Patience => new() { Timeout = PatienceMs };

    private static async Task ToChuteAsync(IPage page)
    {
        await page.GotoAsync("/visits/next/chute");
        await page.Locator("body[data-offline=ready]").WaitForAsync();
        // Painted before it is pressed: a browser drops what comes before its first frame.
        await page.ScreenshotAsync();
    }

    // By mouse: a touch held too long on a busy machine is a long press to the browser, and does nothing.
    private static Task PressAsync(IPage page, string name) => page.Locator("button:visible", new() { HasText = name }).First.ClickAsync();

    private static Task SentAsync(IPage page) => Assertions.Expect(page.Locator("#waiting")).ToHaveTextAsync("All sent", Patience);

    /// <summary>A milked cow of whom nothing is known, neither flagged nor listed nor treated: what is found in her is this test's alone.</summary>
    private async Task<string> SoundCowAsync(IReadOnlyCollection<string> except)
    {
        var busy = new[] { "api/findings", "api/trim-list", "api/flags" };
        var names = new HashSet<string>(except, StringComparer.Ordinal);
        foreach (var route in busy)
            names.UnionWith((await ListAsync(route)).Select(row => row.GetProperty("cow").GetString()!));
        return (await ListAsync("api/cows")).First(cow => cow.GetProperty("leftOn").ValueKind == JsonValueKind.Null && !names.Contains(cow.GetProperty("cow").GetString()!))
            .GetProperty("cow").GetString()!;
    }

    private Task<JsonElement[]> FoundTodayAsync(string cow) => ListAsync($"api/findings?cow={cow}&from={DateTime.UtcNow.AddHours(-2).ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture)}");

    private async Task<JsonElement[]> ListAsync(string route) => [.. JsonDocument.Parse(await barn.Client.GetStringAsync(route)).RootElement.EnumerateArray()];

    private static Task LookAsync(IPage page, string name, int smallest = 56) => Screen.LookAsync(page, name, smallest);
}
