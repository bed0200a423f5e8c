namespace GaitWatch.Store;

/// <summary>The store of one farm: the log of inputs, the state folded from it, and the ways to read both.</summary>
public sealed partial class BarnStore : IAsyncDisposable
{
    /// <summary>
    /// Opens the store, makes it when missing, and brings an older one up to date. One process at a time holds it for writing.
    /// </summary>
    /// <exception cref="StoreUnavailableException">Another process holds it, it is of a newer version, or the disk refuses.</exception>
    public static Task<BarnStore> OpenAsync(StoreOptions options, TimeProvider time, CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <summary>The options it was opened with.</summary>
    public StoreOptions Options => throw new NotImplementedException();

    /// <summary>The durable inbox.</summary>
    public InputLog Inputs => throw new NotImplementedException();

    /// <summary>How far the inbox has been folded.</summary>
    public Progress Progress => throw new NotImplementedException();

    /// <summary>Reads what people and programs ask for.</summary>
    public BarnReader Reader => throw new NotImplementedException();

    /// <summary>
    /// Starts a change of the derived state. One at a time; inputs wait meanwhile. Dispose without
    /// <see cref="StateChange.CommitAsync"/> to take everything back.
    /// </summary>
    public Task<StateChange> BeginAsync(CancellationToken cancellation = default) => throw new NotImplementedException();

    /// <inheritdoc/>
    public ValueTask DisposeAsync() => throw new NotImplementedException();
}
