using System.CommandLine;
using System.Globalization;

namespace GaitWatch.Simulator;

/// <summary><c>record</c>: the barn's inputs to a file that <c>gaitwatch replay</c> reads.</summary>
internal static class RecordCommand
{
    public static Command Build(TextWriter output, TextWriter error)
    {
        var command = new Command("record", "Writes a barn as recorded inputs, one JSON object a line. The same options give the same file.");
        var file = new Option<string>("--out") { Description = "The file; - is standard output.", Required = true };
        var end = new Option<string>("--end") { Description = "The instant at which the history ends, RFC 3339.", DefaultValueFactory = _ => "2026-03-02T10:00:00Z" };
        end.Check(value => DateTimeOffset.TryParse(value, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out _)
            ? null
            : $"'{value}': an instant as 2026-03-02T10:00:00Z would be right.");
        command.Options.Add(file);
        command.Options.Add(end);
        var herd = new HerdOptions(command);
        command.Validators.Add(result =>
        {
            if (!herd.HasHistory(result))
                result.AddError("--days 0 records nothing: give days.");
        });
        command.SetAction(async (parsed, cancellationToken) =>
        {
            var path = parsed.GetValue(file)!;
            var parsedEnd = DateTimeOffset.Parse(parsed.GetValue(end)!, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal);
            try
            {
                var barn = new DemoBarn(herd.Herd(parsed, parsedEnd), herd.Feed(parsed) with { ImportRegister = false });
                await using var stream = path == "-" ? Console.OpenStandardOutput() : new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.Read, 1 << 16);
                var transport = new RecordingTransport(stream);
                await barn.HistoryAsync(transport, new LineProgress(error), cancellationToken);
                if (path != "-")
                    await output.WriteLineAsync($"{transport.Lines} inputs in {path}.");
                return 0;
            }
            catch (OperationCanceledException)
            {
                await error.WriteLineAsync("Ended before the history did.");
                return 1;
            }
            catch (Exception failure) when (failure is InvalidOperationException or IOException or UnauthorizedAccessException)
            {
                await error.WriteLineAsync(failure.Message);
                return 1;
            }
        });
        return command;
    }
}
