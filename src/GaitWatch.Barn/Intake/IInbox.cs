using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>Where inputs become durable; as <see cref="InputLog"/> promises.</summary>
internal interface IInbox
{
    /// <summary>Makes a batch durable in one commit.</summary>
    Task<AppendResult> AppendAsync(IReadOnlyList<Input> inputs, CancellationToken cancellation);
}

/// <summary>The inbox of the store.</summary>
internal sealed class StoreInbox(InputLog log) : IInbox
{
    public Task<AppendResult> AppendAsync(IReadOnlyList<Input> inputs, CancellationToken cancellation) => log.AppendAsync(inputs, cancellation);
}
