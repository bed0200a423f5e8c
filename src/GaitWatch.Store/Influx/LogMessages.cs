using Microsoft.Extensions.Logging;

namespace GaitWatch.Store;

/// <summary>Every sentence this project logs. Ids: 1500 export to InfluxDB.</summary>
internal static partial class LogMessages
{
    [LoggerMessage(1500, LogLevel.Warning, "{Fault} {Points} points wait; nothing is lost, the rest of the service goes on.")]
    public static partial void SeriesNotTaken(this ILogger log, string fault, long points);

    [LoggerMessage(1501, LogLevel.Information, "InfluxDB takes points again after {Failures} failed tries.")]
    public static partial void SeriesTakenAgain(this ILogger log, int failures);

    [LoggerMessage(1502, LogLevel.Error, "The export to InfluxDB stopped for a moment: {Fault}")]
    public static partial void SeriesTurnFailed(this ILogger log, string fault, Exception exception);
}
