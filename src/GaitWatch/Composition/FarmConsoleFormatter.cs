using System.Globalization;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Logging.Console;
using Microsoft.Extensions.Options;

namespace GaitWatch;

/// <summary>One line an entry, at the farm's time: <c>2026-03-02 06:14:07 info  Barn: 3 crossings analysed</c>.</summary>
/// <remarks>The stack of an exception follows indented only for errors, where someone has to find the fault.</remarks>
internal sealed class FarmConsoleFormatter(IOptions<FarmConsoleFormatterOptions> options) : ConsoleFormatter(FormatterName)
{
    /// <summary>Its name among the console's formatters.</summary>
    public const string FormatterName = "farm";

    /// <inheritdoc/>
    public override void Write<TState>(in LogEntry<TState> logEntry, IExternalScopeProvider? scopeProvider, TextWriter textWriter)
    {
        var message = logEntry.Formatter(logEntry.State, logEntry.Exception).ReplaceLineEndings(" ");
        var at = TimeZoneInfo.ConvertTime(options.Value.Time.GetUtcNow(), options.Value.Zone);
        textWriter.Write(at.ToString("yyyy-MM-dd HH:mm:ss ", CultureInfo.InvariantCulture));
        textWriter.Write(Level(logEntry.LogLevel));
        textWriter.Write(' ');
        textWriter.Write(Short(logEntry.Category));
        textWriter.Write(": ");
        textWriter.Write(message);
        for (var exception = logEntry.Exception; exception is not null; exception = exception.InnerException)
        {
            // Many messages carry their exception's words already.
            if (!message.Contains(exception.Message, StringComparison.Ordinal))
                textWriter.Write($" ({exception.GetType().Name}: {exception.Message.ReplaceLineEndings(" ")})");
        }

        textWriter.WriteLine();
        if (logEntry is { LogLevel: >= LogLevel.Error, Exception.StackTrace: { } stack })
            textWriter.WriteLine(stack);
    }

    private static string Level(LogLevel level) => level switch
    {
        LogLevel.Trace => "trace",
        LogLevel.Debug => "debug",
        LogLevel.Information => "info ",
        LogLevel.Warning => "WARN ",
        LogLevel.Error => "ERROR",
        LogLevel.Critical => "FATAL",
        _ => "     ",
    };

    // The last part alone says who speaks.
    private static string Short(string category) => category[(category.LastIndexOf('.') + 1)..];
}

/// <summary>What the formatter needs to know.</summary>
internal sealed class FarmConsoleFormatterOptions : ConsoleFormatterOptions
{
    /// <summary>The farm's time zone.</summary>
    public TimeZoneInfo Zone { get; set; } = TimeZoneInfo.Utc;

    /// <summary>The clock.</summary>
    public TimeProvider Time { get; set; } = TimeProvider.System;
}
