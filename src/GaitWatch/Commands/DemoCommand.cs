using System.CommandLine;

namespace GaitWatch;

/// <summary><c>demo</c>: a simulated barn on the embedded broker and store, the service on top.</summary>
internal static class DemoCommand
{
    // Any other would do; with this one the story of the printed cows is the same on every machine.
    private const long Seed = 7;

    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var data = new Option<DirectoryInfo?>("--data")
        {
            Description = "Keep the demo's store in this folder. Default: a fresh temporary one, removed at the end.",
            HelpName = "DIR",
        };
        var seed = new Option<long>("--seed") { Description = "Another herd. Default 7.", DefaultValueFactory = _ => Seed };
        var verb = new VerbCommand("demo", "A simulated barn to look around in: sixty cows, a year of crossings up to now, some of them lame, then cows crossing as you watch. All of it is invented.")
        {
            Examples =
            [
                ("gaitwatch demo", "starts it and says what to open; Ctrl-C ends it"),
                ("gaitwatch demo --data ./demo", "keeps the store, to look at afterwards with 'gaitwatch run'"),
            ],
        };
        verb.Add(data);
        verb.Add(seed);
        verb.SetAction((parsed, cancellation) => Demo.RunAsync(context, parsed.GetValue(data)?.FullName, parsed.GetValue(seed), cancellation));
        return verb;
    }
}
