namespace GaitWatch.Store;

/// <summary>
/// The durable inbox: every frame, tag, passage, status and write that came in, in order of arrival. When
/// <see cref="AppendAsync"/> has returned, its batch survives a power cut.
/// </summary>
/// <remarks>Safe to use from several threads; batches are written one after another.</remarks>
public sealed partial class InputLog
{
    /// <summary>Makes a batch durable in one commit.</summary>
    /// <param name="inputs">The inputs, in order of arrival.</param>
    /// <param name="cancellation">Gives up waiting for the turn; a commit under way is finished.</param>
    /// <returns>What became of them.</returns>
    /// <exception cref="StoreUnavailableException">Nothing of the batch is durable: the disk is full, the file locked or damaged. The message says which and what to do.</exception>
    public Task<AppendResult> AppendAsync(IReadOnlyList<Input> inputs, CancellationToken cancellation = default) => throw new NotImplementedException();
}
