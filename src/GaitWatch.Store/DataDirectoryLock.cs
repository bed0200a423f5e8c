namespace GaitWatch.Store;

/// <summary>Keeps a data directory to one process. The lock is the operating system's: it goes when the process does, however it ends.</summary>
internal sealed class DataDirectoryLock : IDisposable
{
    private readonly FileStream _file;

    private DataDirectoryLock(FileStream file) => _file = file;

    /// <exception cref="StoreUnavailableException">The folder cannot be made or written, or another process holds it.</exception>
    public static DataDirectoryLock Take(string directory)
    {
        try
        {
            Directory.CreateDirectory(directory);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new StoreUnavailableException(
                $"GaitWatch:DataDirectory is '{directory}', which cannot be made ({exception.Message}): name a folder that may be written.", exception);
        }

        var path = Path.Combine(directory, "gaitwatch.lock");
        try
        {
            return new DataDirectoryLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None));
        }
        catch (UnauthorizedAccessException exception)
        {
            throw new StoreUnavailableException(
                $"GaitWatch:DataDirectory is '{directory}', which may not be written by this user: give the rights or name another folder.", exception);
        }
        catch (IOException exception)
        {
            throw new StoreUnavailableException(
                $"GaitWatch:DataDirectory '{directory}' is held by another GaitWatch: end it, speak to it with --url, or name another folder.", exception);
        }
    }

    public void Dispose() => _file.Dispose();
}
