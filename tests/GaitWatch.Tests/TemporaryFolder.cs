namespace GaitWatch.Tests;

/// <summary>A folder of a test's own, gone when the test is.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("gaitwatch-test-").FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
