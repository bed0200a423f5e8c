using System.Threading.Channels;
using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>
/// The door of the inbox: takes inputs, lets a bounded amount of memory wait, and tells each sender when its own is durable.
/// </summary>
/// <remarks>Safe to use from several threads; what one thread offers becomes durable in the order offered.</remarks>
public sealed class Intake
{
    // What an input costs beside its payload: the objects that carry it through the queue.
    private const long Overhead = 256;

    private readonly Channel<Waiting> _queue = Channel.CreateUnbounded<Waiting>(new() { SingleReader = true });
    private readonly Lock _gate = new();
    private readonly long _mostWaiting;
    private long _waiting;
    private bool _closed;
    private TaskCompletionSource _room = New();

    /// <summary>Makes an empty intake.</summary>
    /// <param name="options">How much memory may wait.</param>
    public Intake(BarnOptions options) => _mostWaiting = options.MostWaitingBytes;

    /// <summary>How much memory waits to become durable, bytes.</summary>
    public long WaitingBytes
    {
        get
        {
            lock (_gate)
                return _waiting;
        }
    }

    /// <summary>Takes an input as soon as there is room.</summary>
    /// <param name="input">The input.</param>
    /// <param name="cancellation">Gives up waiting for room.</param>
    /// <returns>
    /// When it has been taken: a task that completes when the input is durable. It fails with
    /// <see cref="IntakeClosedException"/> when the service stops before that; then the sender must send it again.
    /// </returns>
    /// <exception cref="IntakeClosedException">The service is stopping.</exception>
    public async ValueTask<Task> OfferAsync(Input input, CancellationToken cancellation = default)
    {
        var size = SizeOf(input);
        while (true)
        {
            Task room;
            lock (_gate)
            {
                if (_closed)
                    throw new IntakeClosedException();
                if (_waiting < _mostWaiting)
                {
                    _waiting += size;
                    break;
                }

                room = _room.Task;
            }

            await room.WaitAsync(cancellation);
        }

        var waiting = new Waiting(input, size);
        if (!_queue.Writer.TryWrite(waiting))
        {
            Release(size);
            throw new IntakeClosedException();
        }

        return waiting.Durable.Task;
    }

    /// <summary>Waits until something is offered; false when the intake is closed and empty.</summary>
    internal ValueTask<bool> UntilOfferedAsync(CancellationToken cancellation) => _queue.Reader.WaitToReadAsync(cancellation);

    /// <summary>Takes out what waits, at most some.</summary>
    internal void Drain(List<Waiting> into, int most)
    {
        while (into.Count < most && _queue.Reader.TryRead(out var next))
            into.Add(next);
    }

    /// <summary>Takes nothing more; whoever waits for room is turned away.</summary>
    internal void Close()
    {
        _queue.Writer.TryComplete();
        lock (_gate)
        {
            _closed = true;
            _room.TrySetResult();
        }
    }

    /// <summary>Tells the senders of these that they are durable.</summary>
    internal void Complete(List<Waiting> batch)
    {
        Release(batch.Sum(one => one.Size));
        foreach (var one in batch)
            one.Durable.TrySetResult();
        batch.Clear();
    }

    /// <summary>Tells the senders of these that they have to send again.</summary>
    internal void Refuse(List<Waiting> batch)
    {
        Release(batch.Sum(one => one.Size));
        foreach (var one in batch)
        {
            one.Durable.TrySetException(new IntakeClosedException());
            // Nobody may be looking any more: a connection that ended does not ask.
            _ = one.Durable.Task.Exception;
        }

        batch.Clear();
    }

    private static TaskCompletionSource New() => new(TaskCreationOptions.RunContinuationsAsynchronously);

    private static long SizeOf(Input input) => Overhead + input switch
    {
        FrameInput { Frame: Frame frame } => (long)frame.SamplesKg.Length * frame.Count * sizeof(float),
        RejectedInput rejected => rejected.Payload.Length + (2L * rejected.Detail.Length),
        _ => 0,
    };

    private void Release(long size)
    {
        TaskCompletionSource? room = null;
        lock (_gate)
        {
            var wasFull = _waiting >= _mostWaiting;
            _waiting -= size;
            if (wasFull && _waiting < _mostWaiting && !_closed)
            {
                room = _room;
                _room = New();
            }
        }

        room?.SetResult();
    }

    /// <summary>An input on its way to the store.</summary>
    internal sealed record Waiting(Input Input, long Size)
    {
        public TaskCompletionSource Durable { get; } = New();
    }
}
