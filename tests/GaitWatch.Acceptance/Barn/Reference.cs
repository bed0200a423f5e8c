namespace GaitWatch.Acceptance;

/// <summary>
/// What the recorded barn comes to when everything arrives once and in order: <c>gaitwatch replay</c> into a store of its own, no
/// service running, then the service started over that store. The other ways are held against this.
/// </summary>
public sealed class Reference : IAsyncLifetime, IDisposable
{
    private readonly TemporaryFolder _folder = new();

    internal RecordedBarn Barn => RecordedBarn.Instance;

    internal (string Alerts, string Passages, string Cows) State { get; private set; }

    internal string ReplaySaid { get; private set; } = "";

    public async Task InitializeAsync()
    {
        var recording = Path.Combine(_folder.Path, "barn.ndjson");
        await File.WriteAllLinesAsync(recording, await Barn.LinesAsync());
        var (code, said) = await CommandRun.OfAsync(
            _folder.Path, "replay", recording, $"--GaitWatch:DataDirectory={Path.Combine(_folder.Path, "data")}",
            $"--GaitWatch:Http:Urls=http://127.0.0.1:{Programs.FreePort()}", "--GaitWatch:TimeZone=Europe/Dublin");
        ReplaySaid = said;
        if (code != 0)
            throw new InvalidOperationException($"The replay ended with {code}: {said}");
        await using var service = await Service.StartAsync(_folder.Path);
        State = await BarnState.OfAsync(service.Client);
    }

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => _folder.Dispose();
}

/// <summary>The tests that are held against <see cref="Reference"/>.</summary>
[CollectionDefinition(Name)]
public sealed class RecordedBarnGroup : ICollectionFixture<Reference>
{
    public const string Name = "Recorded barn";
}
