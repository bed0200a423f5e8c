using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary>Whether InfluxDB takes the series.</summary>
internal static class InfluxCheck
{
    private const string What = "influxdb";

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    // A barn's machine may restart; a lag of hours wants looking at.
    private const double LongLagSeconds = 3600;

    /// <summary>Looks at it: through the running service, which knows how sending goes, or, where none runs, whether InfluxDB answers.</summary>
    public static async Task<CheckLine> OfAsync(InfluxSettings influx, ApiClient? service, CancellationToken cancellation)
    {
        if (service is null)
            return await OfAnswerAsync(influx, cancellation);
        var series = await service.GetAsync<SeriesView>("api/series", cancellation);
        if (!series.IsSetUp)
            return CheckLine.Notice(What, "The running service was started without GaitWatch:Influx.", "Start it again with the settings as they are now.");
        var waiting = string.Create(CultureInfo.InvariantCulture, $"{series.Pending} points wait, the oldest for {series.LagSeconds:0} s; {series.Sent} sent since the service started");
        if (series.Fault is { } fault)
            return CheckLine.Fault(What, $"{waiting}. {fault}", "Nothing is lost: what waits is sent when InfluxDB takes it.");
        if (series.RefusedKept > 0)
            return CheckLine.Notice(What, $"{waiting}; InfluxDB refused {series.RefusedKept} points.", "GET /api/series/refused tells why; after mending it, 'gaitwatch export series' tells them anew.");
        return series.LagSeconds > LongLagSeconds ? CheckLine.Notice(What, $"{waiting}.", "See whether InfluxDB keeps up.") : CheckLine.Ok(What, $"{waiting}.");
    }

    private static async Task<CheckLine> OfAnswerAsync(InfluxSettings influx, CancellationToken cancellation)
    {
        using var client = new HttpClient { Timeout = Patience };
        try
        {
            using var answer = await client.GetAsync(new Uri(influx.Url, "ping"), cancellation);
            return answer.IsSuccessStatusCode
                ? CheckLine.Ok(What, $"{influx.Url} answers; whether the token may write shows once the service runs.")
                : CheckLine.Fault(What, $"What answers at {influx.Url} is not InfluxDB: /ping gave {(int)answer.StatusCode}.", "Set GaitWatch:Influx:Url to InfluxDB's own address.");
        }
        catch (Exception e) when (e is HttpRequestException or TaskCanceledException && !cancellation.IsCancellationRequested)
        {
            return CheckLine.Fault(What, $"{influx.Url} does not answer: {e.Message.TrimEnd('.')}.", "Start InfluxDB, or set GaitWatch:Influx:Url; until then points wait in the store.");
        }
    }
}
