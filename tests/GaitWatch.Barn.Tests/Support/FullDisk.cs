using GaitWatch.Store;
using Microsoft.Extensions.DependencyInjection;

namespace GaitWatch.Barn.Tests;

/// <summary>A store whose disk is full as long as a test says so.</summary>
internal sealed class FullDisk(IInbox inbox) : IInbox
{
    private volatile bool _full;
    private int _refused;

    public bool IsFull
    {
        get => _full;
        set => _full = value;
    }

    public int Refused => Volatile.Read(ref _refused);

    public void Use(IServiceCollection services) => services.AddSingleton<IInbox>(this);

    public Task<AppendResult> AppendAsync(IReadOnlyList<Input> inputs, CancellationToken cancellation)
    {
        if (!_full)
            return inbox.AppendAsync(inputs, cancellation);
        Interlocked.Increment(ref _refused);
        throw new StoreUnavailableException("The disk of the data directory is full.");
    }
}
