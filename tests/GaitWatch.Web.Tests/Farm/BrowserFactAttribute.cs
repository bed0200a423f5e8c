namespace GaitWatch.Web.Tests;

/// <summary>A test in a real browser; where Debian's Chromium is not installed it is skipped and says so.</summary>
internal sealed class BrowserFactAttribute : FactAttribute
{
    public const string Chromium = "/usr/bin/chromium";

    public BrowserFactAttribute()
    {
        if (!File.Exists(Chromium))
            Skip = $"{Chromium} is not installed: apt-get install chromium.";
    }
}
