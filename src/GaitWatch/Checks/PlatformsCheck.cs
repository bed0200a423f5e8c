using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>The platforms: as they are set up, and what they told last.</summary>
internal static class PlatformsCheck
{
    private const string What = "platform";

    /// <summary>As set up; their geometry was checked with the settings.</summary>
    public static IEnumerable<CheckLine> SetUp(IEnumerable<TwinPlate> platforms) =>
        platforms.Select(platform => CheckLine.Ok(
            What, string.Create(CultureInfo.InvariantCulture, $"{platform.Id}: {platform.PlateLengthMetres} m, {platform.Cells.Length} cells, {platform.SampleRateHz} Hz.")));

    /// <summary>As they do.</summary>
    public static IEnumerable<CheckLine> Health(IEnumerable<PlatformView> platforms, TimeZoneInfo zone)
    {
        foreach (var platform in platforms)
        {
            var last = platform.LastPassageAt is null ? "no crossing yet" : $"last crossing {Words.Minute(platform.LastPassageAt, zone)}";
            if (platform.Troubles.Length == 0)
            {
                yield return platform.State == "ok"
                    ? CheckLine.Ok(What, $"{platform.Id}: {last}.")
                    : CheckLine.Notice(What, $"{platform.Id} is {platform.State}; {last}.");
            }

            foreach (var trouble in platform.Troubles)
                yield return CheckLine.Notice(What, $"{platform.Id}: {trouble}");
        }
    }
}
