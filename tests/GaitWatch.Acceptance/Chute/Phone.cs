using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>A phone: Debian's Chromium with a profile and a home of its own that outlive its being closed, 360 by 800, tapped.</summary>
internal sealed class Phone : IAsyncDisposable
{
    public const float PatienceMs = 120_000;

    private readonly IPlaywright _playwright;

    private Phone(IPlaywright playwright, IBrowserContext context, IPage page)
    {
        _playwright = playwright;
        Context = context;
        Page = page;
    }

    public IBrowserContext Context { get; }

    public IPage Page { get; }

    /// <summary>What the browser complained of.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>How often it was tapped.</summary>
    public int Taps { get; private set; }

    /// <param name="folder">Its home and profile lie below it.</param>
    /// <param name="isOffline">Whether it has no network from the start.</param>
    public static async Task<Phone> TakeAsync(string folder, bool isOffline = false)
    {
        var playwright = await Playwright.CreateAsync();
        var context = await playwright.Chromium.LaunchPersistentContextAsync(Path.Combine(folder, "profile"), new()
        {
            ExecutablePath = Programs.Chromium,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", $"--host-resolver-rules=MAP {TestAuthority.Host} 127.0.0.1"],
            Env = new Dictionary<string, string>(Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>().ToDictionary(e => (string)e.Key, e => (string)e.Value!)) { ["HOME"] = Path.Combine(folder, "home") },
            ViewportSize = new() { Width = 360, Height = 800 },
            HasTouch = true,
            Offline = isOffline,
        });
        context.SetDefaultTimeout(PatienceMs);
        context.SetDefaultNavigationTimeout(PatienceMs);
        var page = context.Pages[0];
        var phone = new Phone(playwright, context, page);
        page.PageError += (_, error) => phone.Complaints.Add(error);
        page.Console += (_, message) =>
        {
            // That it has no network a browser says for every request: that is what is tested.
            if (message.Type == "error" && !message.Text.Contains("Failed to load resource", StringComparison.Ordinal))
                phone.Complaints.Add(message.Text);
        };
        return phone;
    }

    /// <summary>Presses a button by what it says; by mouse, since a touch held too long on a busy machine is a long press to the browser, and does nothing.</summary>
    public async Task TapAsync(string name)
    {
        await Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = false }).Or(Page.GetByRole(AriaRole.Radio, new() { Name = name, Exact = false }))
            .Or(Page.GetByRole(AriaRole.Switch, new() { Name = name, Exact = false })).First.ClickAsync();
        Taps++;
    }

    /// <summary>Waits until the button at the top says what waits.</summary>
    public Task UntilAsync(string waiting) => Assertions.Expect(Page.Locator("#waiting")).ToHaveTextAsync(waiting, new() { Timeout = PatienceMs });

    /// <summary>Waits until a cow stands there: the page opens before its script has read what the phone keeps.</summary>
    public Task UntilAtAsync(string cow) => Assertions.Expect(Page.Locator("#cow-number")).ToHaveTextAsync(cow, new() { Timeout = PatienceMs });

    public async ValueTask DisposeAsync()
    {
        await Context.CloseAsync();
        _playwright.Dispose();
    }
}
