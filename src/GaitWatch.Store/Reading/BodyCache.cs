using System.Collections.Concurrent;

namespace GaitWatch.Store;

/// <summary>Bodies that were read out of their text before: most of a year's alerts are closed and change no more.</summary>
/// <param name="read">Reads a body.</param>
/// <remarks>Safe to use from several threads: a body is taken for the same only when its text is.</remarks>
internal sealed class BodyCache<T>(Func<string, T> read)
    where T : class
{
    private readonly ConcurrentDictionary<string, (string Text, T Body)> _known = new(StringComparer.Ordinal);

    /// <summary>The body of an id.</summary>
    public T Read(string id, string text)
    {
        if (_known.TryGetValue(id, out var known) && known.Text == text)
            return known.Body;
        var body = read(text);
        _known[id] = (text, body);
        return body;
    }

    /// <summary>Forgets those that are no more, once they are many.</summary>
    public void Keep(IReadOnlyCollection<string> ids)
    {
        if (_known.Count <= (2 * ids.Count) + 100)
            return;
        var kept = ids.ToHashSet(StringComparer.Ordinal);
        foreach (var id in _known.Keys.Where(id => !kept.Contains(id)))
            _known.TryRemove(id, out _);
    }
}
