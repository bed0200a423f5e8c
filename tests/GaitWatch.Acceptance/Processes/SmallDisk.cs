using System.Diagnostics;

namespace GaitWatch.Acceptance;

/// <summary>A file system in memory of a few megabytes, mounted for a test.</summary>
internal sealed class SmallDisk : IAsyncDisposable
{
    private SmallDisk(string folder) => Folder = folder;

    public string Folder { get; }

    private string Ballast => Path.Combine(Folder, "ballast");

    /// <summary>Why none can be mounted here; null when it can.</summary>
    public static string? WhyNot { get; } = Try();

    public static async Task<SmallDisk> MountAsync(string folder, int megabytes)
    {
        await RunAsync("mount", "-t", "tmpfs", "-o", $"size={megabytes}m", "tmpfs", folder);
        return new SmallDisk(folder);
    }

    /// <summary>Takes all the room that is left.</summary>
    public void Fill()
    {
        using var ballast = new FileStream(Ballast, FileMode.Create, FileAccess.Write, FileShare.None, 0);
        var block = new byte[4096];
        try
        {
            while (true)
                ballast.Write(block);
        }
        catch (IOException)
        {
            // Full: as wanted.
        }
    }

    /// <summary>Gives it back.</summary>
    public void Empty() => File.Delete(Ballast);

    public async ValueTask DisposeAsync() => await RunAsync("umount", "-l", Folder);

    private static string? Try()
    {
        var folder = Directory.CreateTempSubdirectory("gaitwatch-mount-").FullName;
        try
        {
            RunAsync("mount", "-t", "tmpfs", "-o", "size=1m", "tmpfs", folder).GetAwaiter().GetResult();
            RunAsync("umount", folder).GetAwaiter().GetResult();
            return null;
        }
        catch (Exception e) when (e is InvalidOperationException or System.ComponentModel.Win32Exception)
        {
            return $"A small file system cannot be mounted here: {e.Message}";
        }
        finally
        {
            Directory.Delete(folder);
        }
    }

    private static async Task RunAsync(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardError = true })!;
        var said = await process.StandardError.ReadToEndAsync();
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} ended with {process.ExitCode}: {said.Trim()}");
    }
}

/// <summary>A test that needs a small file system; skipped, with the reason, where none can be mounted.</summary>
[AttributeUsage(AttributeTargets.Method)]
internal sealed class FullDiskFactAttribute : FactAttribute
{
    public FullDiskFactAttribute() => Skip = SmallDisk.WhyNot;
}
