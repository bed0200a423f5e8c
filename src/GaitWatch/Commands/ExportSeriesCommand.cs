using System.CommandLine;
using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>export series</c>: brings InfluxDB what was kept before the export was set up, or all of it anew.</summary>
internal static class ExportSeriesCommand
{
    private static readonly TimeSpan LookEvery = TimeSpan.FromMilliseconds(500);

    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var since = CommonOptions.Day("--since", "From which day on. Default: everything that is kept.");
        var url = CommonOptions.Url();
        var verb = new VerbCommand("series", "Brings InfluxDB every series from a day on: what it shows from then is removed and told anew from the store.")
        {
            Examples =
            [
                ("gaitwatch export series", "all that is kept, after GaitWatch:Influx was set up"),
                ("gaitwatch export series --since 2026-01-01", "from that day on"),
            ],
        };
        verb.Add(since);
        verb.Add(url);
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: false, cancellation);
            var day = parsed.GetValue(since)?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            await service.Api.WriteAsync(HttpMethod.Post, "api/series/backfill", new { since = day }, cancellation);
            return await FollowAsync(context, service.Api, cancellation);
        });
        return verb;
    }

    private static async Task<int> FollowAsync(CommandContext context, ApiClient api, CancellationToken cancellation)
    {
        var line = new ProgressLine(context);
        while (true)
        {
            var series = await api.GetAsync<SeriesView>("api/series", cancellation);
            if (series.Backfill is { IsComplete: true } && series.Pending == 0)
            {
                line.End();
                await context.Out.WriteLineAsync($"InfluxDB has {series.Backfill.Passages} passages and what belongs to them{(series.Refused == 0 ? "" : $"; it has refused {series.Refused} points since the service started (/api/series/refused tells why)")}.");
                return series.Refused == 0 ? ExitCode.Done : ExitCode.Failed;
            }

            line.Show(series.Fault is { } fault
                ? $"{series.Backfill?.Passages} of {series.Backfill?.Of} passages; {series.Pending} points wait. {fault}"
                : $"{series.Backfill?.Passages} of {series.Backfill?.Of} passages; {series.Pending} points wait.");
            await Task.Delay(LookEvery, context.Time, cancellation);
        }
    }
}
