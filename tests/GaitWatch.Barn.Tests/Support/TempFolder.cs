namespace GaitWatch.Barn.Tests;

/// <summary>A folder of its own for one test, gone after it.</summary>
internal sealed class TempFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("gaitwatch-barn-").FullName;

    public void Dispose()
    {
        try
        {
            Directory.Delete(Path, recursive: true);
        }
        catch (IOException)
        {
            // A file still open somewhere is no failure of the test.
        }
    }
}
