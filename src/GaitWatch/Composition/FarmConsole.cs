using Microsoft.Extensions.Logging.Console;

namespace GaitWatch;

/// <summary>The log on the console: a line an entry, on standard error, so that results on standard output stay clean.</summary>
internal static class FarmConsole
{
    /// <summary>Sets it up as the only log: a line for people, or, with <c>Logging:Console:FormatterName</c> <c>json</c>, an object with every value by name for programs.</summary>
    public static void AddFarmConsole(this ILoggingBuilder logging, IConfiguration configuration, TimeZoneInfo zone, TimeProvider time)
    {
        var json = configuration["Logging:Console:FormatterName"]?.Equals(ConsoleFormatterNames.Json, StringComparison.OrdinalIgnoreCase) is true;
        logging.ClearProviders();
        logging.AddConsole(console =>
        {
            console.FormatterName = json ? ConsoleFormatterNames.Json : FarmConsoleFormatter.FormatterName;
            console.LogToStandardErrorThreshold = LogLevel.Trace;
        });
        logging.Services.Configure<JsonConsoleFormatterOptions>(formatter => (formatter.UseUtcTimestamp, formatter.TimestampFormat) = (true, "yyyy-MM-dd'T'HH:mm:ss.fff'Z'"));
        logging.AddConsoleFormatter<FarmConsoleFormatter, FarmConsoleFormatterOptions>(formatter =>
        {
            formatter.Zone = zone;
            formatter.Time = time;
        });
    }
}
