using System.CommandLine;
using System.Globalization;
using GaitWatch.Store;

namespace GaitWatch;

/// <summary><c>backup</c>: a copy of the store, also while the service runs.</summary>
internal static class BackupCommand
{
    /// <summary>Makes the verb.</summary>
    public static Command Make(CommandContext context)
    {
        var file = new Argument<FileInfo>("FILE") { Description = "Where the copy goes; an older one is never written over." };
        var verb = new VerbCommand(
            "backup",
            "Copies the store of this machine to one file, as it stands at one instant, also while the service runs. To restore: stop the service, put the file in the data directory as "
            + $"{BarnStore.FileName}, delete {BarnStore.FileName}-wal and {BarnStore.FileName}-shm there, start the service.")
        {
            Examples =
            [
                ("gaitwatch backup /media/stick/barn-2026-03-04.db", "to another disk, where it helps when this one fails"),
                ("gaitwatch backup barn.db --GaitWatch:DataDirectory=/var/lib/gaitwatch", "of a store elsewhere on this machine"),
            ],
        };
        verb.Add(file);
        verb.SetAction(async (parsed, cancellation) =>
        {
            var settings = context.Settings(context.Configuration());
            var made = await StoreBackup.MakeAsync(settings.DataDirectory, parsed.GetRequiredValue(file).FullName, cancellation);
            await context.Out.WriteLineAsync(string.Create(
                CultureInfo.InvariantCulture,
                $"{made.File}: {made.Bytes / 1e6:0.0} MB, {made.Inputs} messages and entries, {Newest(made.NewestAt, settings.TimeZone)}. Keep it on another disk."));
            return ExitCode.Done;
        });
        return verb;
    }

    private static string Newest(DateTimeOffset? at, TimeZoneInfo zone) => at is null ? "no crossing yet" : $"the newest crossing {Words.Minute(at, zone)}";
}
