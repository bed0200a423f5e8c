using GaitWatch.Store;
using Microsoft.Extensions.Logging.Abstractions;

namespace GaitWatch.Barn.Tests;

/// <summary>A store and its worker, fed by hand.</summary>
internal sealed class Folding : IAsyncDisposable
{
    private BarnOptions _options;
    private readonly TempFolder? _own;
    private readonly string _folder;
    private TestStore _store;
    private BarnMetrics _metrics;

    private Folding(BarnOptions options, TempFolder? own, string folder, TestStore store)
    {
        _options = options;
        _own = own;
        _folder = folder;
        _store = store;
        (Worker, _metrics) = Work();
    }

    public BarnStore Store => _store.Store;

    public HerdWorker Worker { get; private set; }

    public string Folder => _folder;

    public static async Task<Folding> OpenAsync(BarnOptions? options = null)
    {
        var own = new TempFolder();
        var set = options ?? Some.Options;
        return new Folding(set, own, own.Path, await TestStore.OpenAsync(set, own.Path));
    }

    public Task AppendAsync(params Input[] inputs) => Store.Inputs.AppendAsync(inputs);

    /// <summary>Ends as a crash would, as far as the store is concerned: nothing in memory survives. Goes on under other settings where any are given.</summary>
    public async Task RestartAsync(BarnOptions? options = null)
    {
        _options = options ?? _options;
        _metrics.Dispose();
        await _store.DisposeAsync();
        _store = await TestStore.OpenAsync(_options, _folder);
        (Worker, _metrics) = Work();
    }

    /// <summary>Appends all and folds to the end.</summary>
    public async Task<List<string>> AllAsync(IReadOnlyList<Input> inputs, int perCommit = 1000)
    {
        foreach (var chunk in inputs.Chunk(perCommit))
            await Store.Inputs.AppendAsync(chunk);
        await Worker.CatchUpAsync();
        return await Fingerprint.OfAsync(Store);
    }

    public async ValueTask DisposeAsync()
    {
        _metrics.Dispose();
        await _store.DisposeAsync();
        _own?.Dispose();
    }

    private (HerdWorker, BarnMetrics) Work()
    {
        var metrics = new BarnMetrics(Store);
        return (new HerdWorker(Store, _options, TimeProvider.System, metrics, NullLogger<HerdWorker>.Instance), metrics);
    }
}
