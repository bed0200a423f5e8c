using Microsoft.Playwright;

namespace GaitWatch.Web.Tests;

/// <summary>Pictures of pages for the documents: taken where GAITWATCH_SCREENSHOTS names a folder, else not.</summary>
internal static class Screenshots
{
    private static readonly string? s_folder = Environment.GetEnvironmentVariable("GAITWATCH_SCREENSHOTS");

    public static async Task TakeAsync(IPage page, string name)
    {
        if (s_folder is not null)
            await page.ScreenshotAsync(new() { Path = Path.Combine(s_folder, $"{name}.png") });
    }
}
