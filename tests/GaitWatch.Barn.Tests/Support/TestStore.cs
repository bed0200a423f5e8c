using GaitWatch.Store;

namespace GaitWatch.Barn.Tests;

/// <summary>A real store in a folder of its own.</summary>
internal sealed class TestStore : IAsyncDisposable
{
    private readonly TempFolder? _own;

    private TestStore(TempFolder? own, string folder, BarnStore store)
    {
        _own = own;
        Folder = folder;
        Store = store;
    }

    public BarnStore Store { get; }

    public string Folder { get; }

    public static async Task<TestStore> OpenAsync(BarnOptions? options = null, string? folder = null)
    {
        var own = folder is null ? new TempFolder() : null;
        var at = folder ?? own!.Path;
        var set = options ?? Some.Options;
        return new TestStore(own, at, await BarnStore.OpenAsync(
            new StoreOptions { DataDirectory = at, Calendar = set.Calendar, Platforms = set.Platforms, Farm = set.Farm }, TimeProvider.System));
    }

    public async ValueTask DisposeAsync()
    {
        await Store.DisposeAsync();
        _own?.Dispose();
    }
}
