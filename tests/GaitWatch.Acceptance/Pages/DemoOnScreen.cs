using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace GaitWatch.Acceptance;

/// <summary>The demo barn with its year of history behind it and cows crossing, and a browser to look at it; shared by the walks.</summary>
public sealed partial class DemoOnScreen : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private ChildProcess? _demo;
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Where its pages are.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>Asks its API.</summary>
    public HttpClient Client { get; private set; } = null!;

    /// <summary>What browsers complained of, and requests to anywhere else.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>What it printed.</summary>
    public string Said => _demo!.Said;

    internal static ChildProcess Start(TemporaryFolder folder, string temporary) => ChildProcess.Start(
        "env", [$"TMPDIR={temporary}", "dotnet", Programs.GaitWatch, "demo", $"--GaitWatch:Http:Urls=http://127.0.0.1:{Programs.FreePort()}", $"--GaitWatch:Mqtt:Port={Programs.FreePort()}"], folder.Path);

    public async Task InitializeAsync()
    {
        _demo = Start(_folder, _folder.Sub("tmp"));
        var said = await Until.AsyncOf(
            "the demo to say what to look at", () => Task.FromResult(_demo.Said), said => said.Contains("Ctrl-C ends the demo.", StringComparison.Ordinal), TimeSpan.FromMinutes(10), () => _demo.Said);
        Address = new Uri(Runs().Match(said).Groups[1].Value);
        Client = new HttpClient { BaseAddress = Address, Timeout = TimeSpan.FromMinutes(2) };
        // The first of the crossings that happen as one watches, with its samples.
        await Until.AsyncOf(
            "a crossing", () => Client.GetStringAsync($"api/passages?quality=accepted&from={DateTime.UtcNow.AddMinutes(-30):yyyy-MM-dd'T'HH:mm:ss'Z'}"),
            passages => passages.Contains("\"speedMetresPerSecond\":1", StringComparison.Ordinal) || passages.Contains("\"speedMetresPerSecond\":0.", StringComparison.Ordinal), TimeSpan.FromMinutes(3), () => _demo.Said);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = "/usr/bin/chromium", Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"] });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
        Client?.Dispose();
        if (_demo is not null)
            await _demo.DisposeAsync();
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>A page in a browser of its own.</summary>
    /// <param name="width">360 for a phone, 1280 for a desk.</param>
    /// <param name="scheme">Light or dark.</param>
    public async Task<IPage> OpenAsync(int width, ColorScheme scheme = ColorScheme.Light)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = 800 }, HasTouch = width < 700, ColorScheme = scheme, BaseURL = Address.ToString(), Locale = "en-GB",
        });
        context.SetDefaultTimeout(120_000);
        var page = await context.NewPageAsync();
        page.Console += (_, message) => { if (message.Type is "error" or "warning") Complaints.Add($"{page.Url}: {message.Text}"); };
        page.PageError += (_, error) => Complaints.Add($"{page.Url}: {error}");
        page.Request += (_, request) => { if (!request.Url.StartsWith(Address.ToString(), StringComparison.Ordinal)) Complaints.Add($"{page.Url} asks for {request.Url}"); };
        return page;
    }

    /// <summary>Takes a picture for the documents where GAITWATCH_SCREENSHOTS names a folder.</summary>
    /// <param name="page">The page as it stands.</param>
    /// <param name="name">The picture's name.</param>
    /// <param name="height">How much of it is seen, px.</param>
    public static async Task PictureAsync(IPage page, string name, float height = 800)
    {
        if (Environment.GetEnvironmentVariable("GAITWATCH_SCREENSHOTS") is not { Length: > 0 } folder)
            return;
        var width = page.ViewportSize!.Width;
        // A taller window for the picture: what is fixed to its bottom stays there.
        await page.SetViewportSizeAsync(width, (int)height);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        await page.ScreenshotAsync(new() { Path = Path.Combine(folder, $"{name}-{(width < 700 ? "phone" : "desktop")}.png") });
        await page.SetViewportSizeAsync(width, 800);
    }

    [GeneratedRegex(@"GaitWatch runs at (http://127\.0\.0\.1:\d+/)")]
    private static partial Regex Runs();
}
