namespace GaitWatch;

/// <summary>Opens the file a command is given.</summary>
internal static class InputFile
{
    /// <summary>Opens it for reading.</summary>
    /// <exception cref="CommandFailedException">It is not there or may not be read.</exception>
    public static FileStream Open(FileInfo file)
    {
        try
        {
            return new FileStream(file.FullName, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16, FileOptions.Asynchronous | FileOptions.SequentialScan);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new CommandFailedException(Directory.Exists(file.FullName) ? $"{file.FullName} is a folder; a file is needed." : $"There is no file {file.FullName}.", e);
        }
        catch (UnauthorizedAccessException e)
        {
            throw new CommandFailedException(Directory.Exists(file.FullName) ? $"{file.FullName} is a folder; a file is needed." : $"{file.FullName} may not be read by this user.", e);
        }
    }
}
