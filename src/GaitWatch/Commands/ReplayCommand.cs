using System.CommandLine;

namespace GaitWatch;

/// <summary><c>replay</c>: recorded inputs, handed to the service as if they came now.</summary>
internal static class ReplayCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var file = new Argument<string>("FILE") { Description = "Recorded inputs, one a line: {\"topic\",\"payload\"} or {\"method\",\"route\",\"body\"}; '-' for standard input." };
        var url = CommonOptions.Url();
        var verb = new VerbCommand("replay", "Hands recorded inputs to the service. All decisions run on the time inside them, so a year gives in minutes what the year gave; what is there already is not doubled.")
        {
            Examples =
            [
                ("gaitwatch replay year.ndjson", "a recording"),
                ("zcat year.ndjson.gz | gaitwatch replay -", "from standard input"),
                ("gaitwatch replay year.ndjson --GaitWatch:DataDirectory=./try", "into a store of its own"),
            ],
        };
        verb.Add(file);
        verb.Add(url);
        verb.SetAction(async (parsed, cancellation) =>
        {
            var name = parsed.GetRequiredValue(file);
            await using var recording = name == "-" ? context.In() : InputFile.Open(new FileInfo(name));
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: true, cancellation);
            var total = await new Replay(service.Api, new ProgressLine(context)).RunAsync(recording, cancellation);
            foreach (var fault in total.Faults)
                await context.Error.WriteLineAsync($"Line {fault.Line}: {fault.Fault}");
            if (total.Rejected > total.Faults.Count)
                await context.Error.WriteLineAsync($"… and {total.Rejected - total.Faults.Count} more; 'GET /api/ingest/rejected' shows them all.");
            await context.Out.WriteLineAsync($"{total.Lines} lines: {total.Stored} new, {total.Duplicates} known already, {total.Rejected} could not be used.");
            return ExitCode.Done;
        });
        return verb;
    }
}
