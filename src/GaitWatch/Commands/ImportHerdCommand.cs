using System.CommandLine;
using System.Net.Http.Headers;
using System.Text.Json;

namespace GaitWatch;

/// <summary><c>import-herd</c>: the herd register from a file.</summary>
internal static class ImportHerdCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var file = new Argument<FileInfo>("FILE") { Description = "Comma-separated values with a heading line: cow,eid,pen,parity,calvedOn in any order; optionally driedOffOn,dueOn,leftOn,from." };
        var partial = new Option<bool>("--partial") { Description = "Take the good rows when others are bad; without it a bad row means that nothing is taken." };
        var url = CommonOptions.Url();
        var verb = new VerbCommand("import-herd", "Reads the herd register from a file: which cow wears which tag, her pen, her calvings.")
        {
            Examples =
            [
                ("gaitwatch import-herd herd.csv", "all rows or none"),
                ("gaitwatch import-herd herd.csv --partial", "the good rows; the bad ones are named"),
            ],
        };
        verb.Add(file);
        verb.Add(partial);
        verb.Add(url);
        verb.SetAction(async (parsed, cancellation) =>
        {
            var from = InputFile.Open(parsed.GetRequiredValue(file));
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: true, cancellation);
            using var body = new StreamContent(from) { Headers = { ContentType = new MediaTypeHeaderValue("text/csv") { CharSet = "utf-8" } } };
            var route = parsed.GetValue(partial) ? "api/herd?partial=true" : "api/herd";
            var answer = await service.Api.PostAsync<JsonElement>(route, body, cancellation);
            return Tell(context, answer);
        });
        return verb;
    }

    private static int Tell(CommandContext context, JsonElement answer)
    {
        if (!answer.TryGetProperty("taken", out var taken))
        {
            // 202: durable, but the analysis is behind.
            context.Out.WriteLine("Stored. The analysis is behind; the herd shows when it has caught up.");
            return ExitCode.Done;
        }

        foreach (var notice in answer.GetProperty("notices").EnumerateArray())
            context.Error.WriteLine($"Notice: {notice.GetString()}");
        var rejected = answer.GetProperty("rejected").EnumerateArray().ToArray();
        foreach (var row in rejected)
            context.Error.WriteLine($"Line {row.GetProperty("line")}: {row.GetProperty("fault").GetString()}");
        context.Out.WriteLine($"{taken} rows taken, {rejected.Length} rejected.");
        return rejected.Length == 0 ? ExitCode.Done : ExitCode.Failed;
    }
}
