using System.Security.Cryptography;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>
/// The key that signs share links: 32 random bytes in the data directory, made when missing. Who deletes the file ends every
/// link that was given out. It is no part of a backup of the store: a restored farm gives out new links.
/// </summary>
internal static class ShareKey
{
    public const string FileName = "share.key";

    private const int Bytes = 32;

    /// <summary>Reads the key of a data directory, which this process holds, or makes it.</summary>
    /// <exception cref="StoreUnavailableException">The file cannot be read or written, or is no key.</exception>
    public static byte[] Of(string dataDirectory)
    {
        var path = Path.Combine(dataDirectory, FileName);
        try
        {
            if (!File.Exists(path))
                Make(path);
            var key = File.ReadAllBytes(path);
            return key.Length == Bytes
                ? key
                : throw new StoreUnavailableException($"{path} has {key.Length} bytes where the key of share links has {Bytes}: delete it; links given out before then end.");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException($"{path}, the key of share links, cannot be read or written: check the data directory, its disk and its rights ({e.Message}).", e);
        }
    }

    // Under another name first: a power cut leaves no half key.
    private static void Make(string path)
    {
        var unfinished = path + ".new";
        File.Delete(unfinished);
        var options = new FileStreamOptions { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        using (var file = new FileStream(unfinished, options))
        {
            file.Write(RandomNumberGenerator.GetBytes(Bytes));
            file.Flush(flushToDisk: true);
        }

        File.Move(unfinished, path, overwrite: true);
    }
}
