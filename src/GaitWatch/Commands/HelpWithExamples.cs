using System.CommandLine;
using System.CommandLine.Invocation;

namespace GaitWatch;

/// <summary>The usual help, and below it examples and how settings are given.</summary>
internal sealed class HelpWithExamples(SynchronousCommandLineAction usual) : SynchronousCommandLineAction
{
    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        usual.Invoke(parseResult);
        var output = parseResult.InvocationConfiguration.Output;
        var examples = parseResult.CommandResult.Command is VerbCommand verb ? verb.Examples : Everyday;
        output.WriteLine("Examples:");
        var width = examples.Max(example => example.Line.Length);
        foreach (var (line, what) in examples)
            output.WriteLine($"  {line.PadRight(width)}  {what}");
        output.WriteLine();
        output.WriteLine("Settings come from appsettings.json, the environment (GaitWatch__Mqtt__Port=1884) and the");
        output.WriteLine("command line (--GaitWatch:Mqtt:Port=1884). Exit code: 0 done, 1 failed, 2 wrong usage.");
        return ExitCode.Done;
    }

    private static readonly IReadOnlyList<(string Line, string What)> Everyday =
    [
        ("gaitwatch demo", "a simulated barn, to look around in"),
        ("gaitwatch check", "what is wrong with the settings, the store, the broker, and what to do"),
        ("gaitwatch run", "the service: pages, API, MQTT"),
        ("gaitwatch flags", "which cows need looking at today"),
    ];
}
