using System.Globalization;

namespace GaitWatch;

/// <summary>Whether the store's folder can be written, and how much room is left there.</summary>
internal static class DataDirectoryCheck
{
    private const string What = "data";

    // Below this the store may refuse the next batch; raw frames of 300 cows take roughly 15 MB a day.
    private const long FullBytes = 200L << 20;

    private const long TightBytes = 2L << 30;

    /// <summary>Looks at a folder. Leaves nothing behind.</summary>
    public static IEnumerable<CheckLine> Of(string directory)
    {
        if (!Directory.Exists(directory))
        {
            var parent = Nearest(directory);
            yield return CanWrite(parent, out var why)
                ? CheckLine.Ok(What, $"{directory} is not there yet; it is made at the first start.")
                : CheckLine.Fault(What, $"{directory} is not there and cannot be made: {why}", $"Let this user write in {parent}, or set GaitWatch:DataDirectory.");
            foreach (var line in Room(parent))
                yield return line;
            yield break;
        }

        yield return CanWrite(directory, out var reason)
            ? CheckLine.Ok(What, $"{directory} can be written.")
            : CheckLine.Fault(What, $"{directory} cannot be written: {reason}", "Let the user that runs GaitWatch write there, or set GaitWatch:DataDirectory.");
        foreach (var line in Room(directory))
            yield return line;
    }

    private static string Nearest(string directory)
    {
        var at = directory;
        while (!Directory.Exists(at) && Path.GetDirectoryName(at) is { } up)
            at = up;
        return at;
    }

    private static IEnumerable<CheckLine> Room(string directory)
    {
        var free = new DriveInfo(directory).AvailableFreeSpace;
        var text = string.Create(CultureInfo.InvariantCulture, $"{free / (double)(1L << 30):0.0} GB free at {directory}.");
        yield return free switch
        {
            < FullBytes => CheckLine.Fault(What, text, "Free some room: when the disk is full nothing that comes in can be kept."),
            < TightBytes => CheckLine.Notice(What, text, "Free some room before it runs out, or set GaitWatch:FrameRetentionDays lower."),
            _ => CheckLine.Ok(What, text),
        };
    }

    private static bool CanWrite(string directory, out string why)
    {
        var probe = Path.Combine(directory, $".gaitwatch-check-{Guid.NewGuid():N}");
        try
        {
            using (new FileStream(probe, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose))
                why = "";
            return true;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            why = e.Message;
            return false;
        }
    }
}
