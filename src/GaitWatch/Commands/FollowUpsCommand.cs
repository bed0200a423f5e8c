using System.CommandLine;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>follow-ups</c>: what the farm itself has to do, and that it was done.</summary>
internal static class FollowUpsCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var date = CommonOptions.Day("--date", "What is due on that farm day. Default: the day of the newest event.");
        var done = new Option<string?>("--done") { Description = "Say that the one of this id was done.", HelpName = "ID" };
        var at = CommonOptions.Instant("--at", "When it was done. Default: now.");
        var by = new Option<string?>("--by") { Description = "Who did it." };
        var note = new Option<string?>("--note") { Description = "What was seen." };
        var json = CommonOptions.Json();
        var url = CommonOptions.Url();
        var verb = new VerbCommand("follow-ups", "What the farm itself has to do before the trimmer comes again: wraps off, blocks to look at.")
        {
            Examples =
            [
                ("gaitwatch follow-ups", "today"),
                ("gaitwatch follow-ups --date 2026-03-06", "on that day"),
                ("gaitwatch follow-ups --done 1f0c… --by Jan", "it was done, just now"),
            ],
        };
        verb.Add(date);
        verb.Add(done);
        verb.Add(at);
        verb.Add(by);
        verb.Add(note);
        verb.Add(json);
        verb.Add(url);
        verb.Validators.Add(result =>
        {
            var isDone = result.GetResult(done) is not null;
            if (isDone && result.GetResult(date) is not null)
                result.AddError("--date and --done exclude each other: list a day, or say that one was done.");
            if (!isDone && (result.GetResult(at) ?? result.GetResult(by) ?? result.GetResult(note)) is not null)
                result.AddError("--at, --by and --note go with --done ID.");
        });
        verb.SetAction(async (parsed, cancellation) =>
        {
            await using var service = await ServiceConnection.OpenAsync(context, parsed.GetValue(url), makeStore: false, cancellation);
            if (parsed.GetValue(done) is { } id)
            {
                var doneRoute = $"api/follow-ups/{Uri.EscapeDataString(id)}/done";
                var answer = await service.Api.WriteAsync(
                    HttpMethod.Post, doneRoute, new { at = parsed.GetValue(at), by = parsed.GetValue(by), note = parsed.GetValue(note) }, cancellation);
                if (parsed.GetValue(json))
                    await context.Out.WriteLineAsync(answer);
                else if (!WriteAnswer.TellStored(context, answer))
                    Write(context, ApiClient.Read<FollowUpView>(answer, doneRoute), service.Zone);
                return ExitCode.Done;
            }

            var route = parsed.GetValue(date) is { } day ? $"api/follow-ups?date={Words.Day(day)}" : "api/follow-ups";
            if (parsed.GetValue(json))
                await context.Out.WriteLineAsync(await service.Api.GetJsonAsync(route, cancellation));
            else
                Write(context, await service.Api.GetAsync<IReadOnlyList<FollowUpView>>(route, cancellation));
            return ExitCode.Done;
        });
        return verb;
    }

    private static void Write(CommandContext context, FollowUpView done, TimeZoneInfo zone) =>
        context.Out.WriteLine($"Done {Words.Minute(done.DoneAt, zone)}: {done.What}, cow {done.Cow}, {Words.Leg(done.Foot)}.");

    private static void Write(CommandContext context, IReadOnlyList<FollowUpView> tasks)
    {
        if (tasks.Count == 0)
        {
            context.Out.WriteLine("Nothing is to be done before the trimmer comes.");
            return;
        }

        var listing = new Listing(">Cow", "Foot", "What", "Due", "Overdue", "Id", "Why");
        foreach (var task in tasks)
            listing.Add(task.Cow, Words.Leg(task.Foot), task.What, Words.Day(task.DueOn), Words.Day(task.OverdueOn), task.Id, task.Sentence);
        listing.WriteTo(context);
        context.Out.WriteLine();
        context.Out.WriteLine(Words.CallTheVeterinarian);
    }
}
