namespace GaitWatch.Acceptance;

/// <summary>A folder of a test's own, gone when the test is.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("gaitwatch-acceptance-").FullName;

    public string Sub(string name) => Directory.CreateDirectory(System.IO.Path.Combine(Path, name)).FullName;

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
