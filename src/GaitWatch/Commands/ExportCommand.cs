using System.CommandLine;

namespace GaitWatch;

/// <summary><c>export</c>: what the farm has gathered, for other programs. One subcommand for each kind of thing.</summary>
internal static class ExportCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context) => new VerbCommand("export", "What the farm has gathered, for other programs.")
    {
        Examples =
        [
            ("gaitwatch export series --since 2026-01-01", "to InfluxDB, what was kept before it was set up"),
        ],
        Subcommands =
        {
            ExportSeriesCommand.Make(context),
        },
    };
}
