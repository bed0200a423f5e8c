using System.Diagnostics.Metrics;

namespace GaitWatch.Store;

/// <summary>What the export measures of itself.</summary>
public sealed class SeriesMetrics : IDisposable
{
    private readonly Meter _meter = new("GaitWatch.Series");

    /// <summary>Makes the instruments.</summary>
    /// <param name="store">Whose outbox is told of.</param>
    public SeriesMetrics(BarnStore store)
    {
        var series = store.Series;
        _meter.CreateObservableGauge("gaitwatch.series.pending", () => series.Pending, "{point}", "Points that wait to be sent to InfluxDB.");
        _meter.CreateObservableGauge("gaitwatch.series.lag", () => series.Lag.TotalSeconds, "s", "Age of the oldest point that waits to be sent to InfluxDB.");
        _meter.CreateObservableCounter("gaitwatch.series.sent", () => series.State.Sent, "{point}", "Points that InfluxDB has taken.");
        _meter.CreateObservableCounter("gaitwatch.series.refused", () => series.State.Refused, "{point}", "Points that InfluxDB refused for good; they are kept aside.");
        _meter.CreateObservableGauge("gaitwatch.series.failures", () => series.State.Failures, "{try}", "Tries to send to InfluxDB that failed in a row.");
    }

    /// <inheritdoc/>
    public void Dispose() => _meter.Dispose();
}
