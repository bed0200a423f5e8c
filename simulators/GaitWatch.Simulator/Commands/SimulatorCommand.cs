using System.CommandLine;

namespace GaitWatch.Simulator;

/// <summary>The command line: <c>publish</c> and <c>record</c>.</summary>
public static class SimulatorCommand
{
    /// <summary>Runs a command line.</summary>
    /// <param name="args">Its words.</param>
    /// <param name="output">Where results go.</param>
    /// <param name="error">Where progress and faults go.</param>
    /// <param name="cancellationToken">Ends it, as Ctrl-C does.</param>
    /// <returns>0 done, 1 failed, 2 wrong usage.</returns>
    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter error, CancellationToken cancellationToken = default)
    {
        var parsed = Build(output, error).Parse(args);
        var code = await parsed.InvokeAsync(new() { Output = output, Error = error }, cancellationToken);
        return parsed.Errors.Count > 0 ? 2 : code;
    }

    /// <summary>Builds it.</summary>
    /// <param name="output">Where results go.</param>
    /// <param name="error">Where progress and faults go.</param>
    public static RootCommand Build(TextWriter output, TextWriter error)
    {
        var root = new RootCommand(
            """
            A simulated barn: cows with feet, a platform with cells, faults. All of it is invented and drawn from the seed.

            Examples:
              publish --cows 60 --days 30                a month of summed passages to the broker at 127.0.0.1:1883
              publish --herd demo --live                 a year at once, then crossings as they happen, until Ctrl-C
              publish --frames --days 1 --port 1884      a day of raw frames and tags
              record --out barn.jsonl --days 90          recorded inputs, one JSON object a line
              record --out - --frames --days 1           the same of raw frames, to standard output

            Exit code: 0 done, 1 failed, 2 wrong usage.
            """);
        root.Subcommands.Add(PublishCommand.Build(output, error));
        root.Subcommands.Add(RecordCommand.Build(output, error));
        return root;
    }
}
