namespace GaitWatch.Barn;

/// <summary>
/// Saved folds of the last moments, in memory: inputs of several platforms, or of one with many messages in flight, overtake
/// each other by seconds, and folding a whole day again for each would cost more than all else.
/// </summary>
internal sealed class RecentFolds
{
    // Passages between two saved folds: fewer cost more to save, more cost more to fold again.
    private const int Apart = 50;
    private const int Most = 4;

    private readonly List<(DateTimeOffset Head, byte[] Saved)> _saved = [];
    private int _since;

    /// <summary>So many more passages have been folded; whether the fold is to be saved now.</summary>
    public bool IsDue(int passages) => (_since += passages) >= Apart;

    /// <summary>Keeps a fold in which everything up to its head is folded.</summary>
    public void Add(DateTimeOffset head, byte[] saved)
    {
        _since = 0;
        _saved.Add((head, saved));
        if (_saved.Count > Most)
            _saved.RemoveAt(0);
    }

    /// <summary>The newest from before an instant; those that the instant refutes are dropped.</summary>
    public byte[]? Before(DateTimeOffset instant)
    {
        _saved.RemoveAll(one => one.Head >= instant);
        return _saved is [.., var newest] ? newest.Saved : null;
    }

    /// <summary>Drops all.</summary>
    public void Clear()
    {
        _saved.Clear();
        _since = 0;
    }
}
