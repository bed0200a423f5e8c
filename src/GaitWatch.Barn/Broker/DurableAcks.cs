namespace GaitWatch.Barn;

/// <summary>
/// Which acknowledgements of one device's session wait for which inputs. The broker's receiving side notes them while its
/// sending side waits for them, so that a device may have many messages in flight and still hears of each only when it is
/// durable.
/// </summary>
/// <remarks>Noting happens on one thread at a time, in the order of arrival; waiting on another.</remarks>
internal sealed class DurableAcks
{
    private readonly Lock _gate = new();
    private readonly Dictionary<ushort, Task> _waiting = [];
    private ushort? _arriving;

    /// <summary>A message has arrived and is about to be looked at; null when it will not be acknowledged (QoS 0).</summary>
    public void Arriving(ushort? packetId)
    {
        lock (_gate)
            _arriving = packetId;
    }

    /// <summary>What the message that has just arrived waits for.</summary>
    public void Await(Task durable)
    {
        lock (_gate)
        {
            if (_arriving is { } packetId)
            {
                // The same id again before its acknowledgement is the same message sent again: both must be durable.
                _waiting[packetId] = _waiting.TryGetValue(packetId, out var earlier) && !earlier.IsCompleted
                    ? Task.WhenAll(earlier, durable)
                    : durable;
            }

            _arriving = null;
        }
    }

    /// <summary>What the acknowledgement of a message waits for.</summary>
    public Task Before(ushort packetId)
    {
        lock (_gate)
            return _waiting.Remove(packetId, out var durable) ? durable : Task.CompletedTask;
    }
}
