using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;

namespace GaitWatch;

/// <summary>The command line: its verbs, what is wrong usage, and how errors are told.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command.</summary>
    /// <param name="arguments">As the program was given them.</param>
    /// <param name="process">Where it reads and writes.</param>
    /// <param name="cancellation">Ends the command.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, CommandContext process, CancellationToken cancellation = default)
    {
        var context = process with { SettingArguments = [.. arguments.Where(SettingsSource.IsSetting)] };
        var parsed = Root(context).Parse([.. arguments.Where(argument => !SettingsSource.IsSetting(argument))]);
        if (WrongUsage(parsed, context))
            return ExitCode.WrongUsage;
        try
        {
            return await parsed.InvokeAsync(
                new InvocationConfiguration
                {
                    Output = context.Out,
                    Error = context.Error,
                    EnableDefaultExceptionHandler = false,
                    // The service ends itself in order (open messages, the store); the others end at once.
                    ProcessTerminationTimeout = TimeSpan.FromSeconds(30),
                },
                cancellation);
        }
        catch (OperationCanceledException)
        {
            await context.Error.WriteLineAsync("Stopped.");
            return ExitCode.Failed;
        }
        catch (Exception e)
        {
            // The wall of the program: whatever went wrong is told in a sentence, never as a stack trace.
            context.TellError(e);
            return ExitCode.Failed;
        }
    }

    /// <summary>The verbs.</summary>
    internal static RootCommand Root(CommandContext context)
    {
        var root = new RootCommand(
            "GaitWatch turns the crossings of a weigh platform into the load each leg carries, and says early which cow is going lame and on which leg.")
        {
            RunCommand.Make(context),
            DemoCommand.Make(context),
            ReplayCommand.Make(context),
            FlagsCommand.Make(context),
            TrimListCommand.Make(context),
            RecoveryCommand.Make(context),
            VisitCommand.Make(context),
            FindingCommand.Make(context),
            FollowUpsCommand.Make(context),
            ImportHerdCommand.Make(context),
            CalibrateCommand.Make(context),
            ExportCommand.Make(context),
            BackupCommand.Make(context),
            CheckCommand.Make(context),
        };
        var help = root.Options.OfType<HelpOption>().Single();
        help.Action = new HelpWithExamples((SynchronousCommandLineAction)help.Action!);
        root.SetAction(parsed =>
        {
            context.Error.WriteLine($"Which command? One of: {string.Join(", ", root.Subcommands.Select(verb => verb.Name))}. 'gaitwatch --help' tells more.");
            return ExitCode.WrongUsage;
        });
        return root;
    }

    // The verb, and the subcommand where it has some.
    private static IEnumerable<string> Path(CommandResult result) =>
        result.Command is RootCommand ? [] : [.. result.Parent is CommandResult parent ? Path(parent) : [], result.Command.Name];

    private static bool WrongUsage(ParseResult parsed, CommandContext context)
    {
        if (parsed.Errors.Count == 0 || parsed.Action is HelpWithExamples)
            return false;
        foreach (var error in parsed.Errors)
            context.Error.WriteLine(error.Message);
        context.Error.WriteLine($"'gaitwatch {string.Concat(Path(parsed.CommandResult).Select(verb => verb + " "))}--help' shows how it is used.");
        return true;
    }
}
