using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>
/// One platform's crossings as they are to stand after a change: what is stored, read as far as it is needed, and what the
/// change makes of it. Written once, at the end, and only where it differs.
/// </summary>
internal sealed class PlatformPassages(StateChange change, string platform)
{
    private readonly Dictionary<string, Passage> _stored = new(StringComparer.Ordinal);
    private readonly SortedDictionary<DateTimeOffset, Passage> _current = [];
    private readonly List<(DateTimeOffset From, DateTimeOffset To)> _read = [];

    /// <summary>Crossings whose first contact is in [from, to), in order of it.</summary>
    public async Task<List<Passage>> StartedInAsync(DateTimeOffset from, DateTimeOffset to)
    {
        await ReadAsync(from, to);
        return [.. _current.Values.SkipWhile(passage => passage.StartedAt < from).TakeWhile(passage => passage.StartedAt < to)];
    }

    /// <summary>Puts a crossing in its place. The span it lies in must have been read.</summary>
    public void Put(Passage passage) => _current[passage.StartedAt] = passage;

    /// <summary>Takes a crossing away.</summary>
    public void Remove(Passage passage) => _current.Remove(passage.StartedAt);

    /// <summary>Writes what differs from what is stored.</summary>
    /// <returns>Whether anything did, and end of the earliest accepted passage that is new, changed or no more.</returns>
    public async Task<(bool Changed, DateTimeOffset? Earliest)> WriteAsync(HerdRegister register)
    {
        var kept = _current.Values.Select(passage => passage.Id).ToHashSet(StringComparer.Ordinal);
        var removed = _stored.Keys.Where(id => !kept.Contains(id)).ToArray();
        var written = _current.Values.Where(passage => !_stored.TryGetValue(passage.Id, out var was) || !passage.SaysTheSameAs(was)).ToArray();
        if (removed.Length == 0 && written.Length == 0)
            return (false, null);
        var replaced = await change.ReplacePassagesAsync(removed, written, fromFrames: true, register);
        return (true, Earliest.Of(replaced, Earliest.EndOfAccepted(written)));
    }

    private async Task ReadAsync(DateTimeOffset from, DateTimeOffset to)
    {
        foreach (var (begin, end) in Missing(from, to))
        {
            foreach (var passage in await change.CrossingsAsync(platform, begin, end))
            {
                _stored[passage.Id] = passage;
                _current[passage.StartedAt] = passage;
            }
        }

        Merge(from, to);
    }

    private List<(DateTimeOffset From, DateTimeOffset To)> Missing(DateTimeOffset from, DateTimeOffset to)
    {
        var missing = new List<(DateTimeOffset, DateTimeOffset)>();
        foreach (var (begin, end) in _read)
        {
            if (end <= from || begin >= to)
                continue;
            if (begin > from)
                missing.Add((from, begin));
            from = end > from ? end : from;
        }

        if (from < to)
            missing.Add((from, to));
        return missing;
    }

    private void Merge(DateTimeOffset from, DateTimeOffset to)
    {
        foreach (var (begin, end) in _read.Where(read => read.To >= from && read.From <= to).ToArray())
        {
            from = begin < from ? begin : from;
            to = end > to ? end : to;
            _read.Remove((begin, end));
        }

        _read.Add((from, to));
        _read.Sort();
    }
}
