
namespace GaitWatch;

/// <summary>The log on the console: a line an entry, on standard error, so that results on standard output stay clean.</summary>
internal static class FarmConsole
{
    /// <summary>Sets it up as the only log.</summary>
    public static void AddFarmConsole(this ILoggingBuilder logging, TimeZoneInfo zone, TimeProvider time)
    {
        logging.ClearProviders();
        logging.AddConsole(console =>
        {
            console.FormatterName = FarmConsoleFormatter.FormatterName;
            console.LogToStandardErrorThreshold = LogLevel.Trace;
        });
        logging.AddConsoleFormatter<FarmConsoleFormatter, FarmConsoleFormatterOptions>(formatter =>
        {
            formatter.Zone = zone;
            formatter.Time = time;
        });
    }
}
