using System.Globalization;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>What to open and what to look at, beside the truth that only the simulator knows.</summary>
internal static class DemoGuide
{
    /// <summary>Writes it.</summary>
    public static async Task WriteAsync(CommandContext context, ApiClient api, DemoBarn barn, Uri url, TimeZoneInfo zone, CancellationToken cancellation)
    {
        var flags = await api.GetAsync<IReadOnlyList<AlertView>>("api/flags", cancellation);
        var closed = (await api.GetAsync<IReadOnlyList<AlertView>>("api/alerts?state=closed", cancellation)).ToLookup(alert => alert.Cow);
        var gone = (await api.GetAsync<IReadOnlyList<CowView>>("api/cows", cancellation)).Where(cow => cow.LeftOn is not null).Select(cow => cow.Cow).ToHashSet();
        await context.Out.WriteLineAsync($"\nOpen {url} : this morning's list, {flags.Count} cows flagged.\n\nWhat the simulator did to its cows, and what GaitWatch says of them (a day or two old is too young to be seen):");
        var listing = new Listing("Cow", "Truly sore", ">Carries less", "Since", "Treated", "Flagged", "Her curves");
        var end = barn.Herd.Spec.End;
        foreach (var cow in barn.Herd.Episodes.Where(episode => StillOrLately(episode, end) && !gone.Contains(episode.Cow)).GroupBy(episode => episode.Cow).OrderByDescending(cow => cow.Max(episode => episode.DropAt(end))))
        {
            var worst = cow.MaxBy(episode => episode.DropAt(end))!;
            var flag = flags.FirstOrDefault(flag => flag.Cow == cow.Key);
            listing.Add(
                cow.Key, string.Join(" and ", cow.Select(episode => Words.Leg(episode.Foot.ToString().ToLower(CultureInfo.InvariantCulture)))),
                Words.Percent(100 * worst.DropAt(end)), Words.DayOf(worst.OnsetAt, zone), worst.TreatedAt is { } treated ? Words.DayOf(treated, zone) : "",
                flag is not null ? Words.Where(flag.Pattern, flag.Leg) : Earlier(closed[cow.Key].Where(alert => alert.ClosedAt >= cow.Min(episode => episode.OnsetAt)), zone), new Uri(url, $"cows/{Uri.EscapeDataString(cow.Key)}").ToString());
        }

        listing.WriteTo(context);
        await context.Out.WriteLineAsync(
            $"""

            A flag on a cow that is not listed here is a false one. Treated cows: their curves show the leg taking weight again, or not.
            Cows cross now, one every few seconds: {new Uri(url, "platforms")} counts them.
            From another terminal: gaitwatch flags --url {url}   gaitwatch trim-list --url {url}
            Ctrl-C ends the demo.
            """);
    }

    private static string Earlier(IEnumerable<AlertView> closed, TimeZoneInfo zone) =>
        closed.MaxBy(alert => alert.ClosedAt) is { ClosedAt: { } at } alert ? $"{Words.Leg(alert.Leg)}, closed {Words.DayOf(at, zone)}" : "";

    // Sore now, or treated in the last three months.
    private static bool StillOrLately(LamenessEpisode episode, DateTimeOffset end) =>
        episode.DropAt(end) > 0.02 || episode.TreatedAt > end.AddDays(-90);
}
