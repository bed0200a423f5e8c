using System.Collections.Immutable;

namespace GaitWatch.Barn;

/// <summary>What the broker is believed to keep on the service's own topics, and what must be sent to make it what it is to be.</summary>
/// <remarks>Safe to use from several threads.</remarks>
internal sealed class Retained
{
    private readonly Lock _gate = new();
    private readonly Dictionary<string, Kept> _kept = new(StringComparer.Ordinal);

    /// <summary>A new connection: nothing is known of what the broker keeps until it tells.</summary>
    public void Forget()
    {
        lock (_gate)
            _kept.Clear();
    }

    /// <summary>A topic holds this payload since a time stamp; an empty one means that nothing is kept there.</summary>
    public void Holds(string topic, byte[] payload, long since)
    {
        lock (_gate)
            _kept[topic] = new Kept(payload, since, Doubtful: false);
    }

    /// <summary>
    /// Somebody may have missed what came to hold at a time stamp or after it: that is sent once more, an empty payload too.
    /// </summary>
    /// <returns>Whether there is anything of the kind.</returns>
    public bool Doubt(long since)
    {
        lock (_gate)
        {
            var topics = _kept.Where(one => one.Value.Since >= since).Select(one => one.Key).ToArray();
            foreach (var topic in topics)
                _kept[topic] = _kept[topic] with { Doubtful = true };
            return topics.Length > 0;
        }
    }

    /// <summary>
    /// What must be sent, in order of topic: what is not known to stand there, what somebody may have missed, and an empty
    /// payload for whatever stands there and is not wanted.
    /// </summary>
    public ImmutableArray<(string Topic, byte[] Payload)> Missing(IReadOnlyDictionary<string, byte[]> wanted)
    {
        lock (_gate)
        {
            return
            [
                .. wanted.Where(one => !_kept.TryGetValue(one.Key, out var kept) || kept.Doubtful || !kept.Payload.AsSpan().SequenceEqual(one.Value))
                    .Select(one => (one.Key, one.Value))
                    .Concat(_kept.Where(one => (one.Value.Doubtful || one.Value.Payload.Length > 0) && !wanted.ContainsKey(one.Key))
                        .Select(one => (one.Key, Array.Empty<byte>())))
                    .OrderBy(one => one.Key, StringComparer.Ordinal),
            ];
        }
    }

    private sealed record Kept(byte[] Payload, long Since, bool Doubtful);
}
