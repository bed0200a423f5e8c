namespace GaitWatch.Store;

/// <summary>
/// What was worked out of the state, kept until the state changes: several readers of one morning, and several parts of one page, ask
/// for the same. Every change of the state, every write of people and every new crossing makes another state, of which nothing is kept.
/// </summary>
/// <remarks>
/// Safe to use from several threads. What is kept under a state was read after that state was seen, so it is never older than
/// what asks for it.
/// </remarks>
internal sealed class StateMemo
{
    private readonly Lock _gate = new();
    private Dictionary<(string What, object? Of), Task> _known = [];
    private StateMark? _mark;

    /// <summary>What is known, or what is read now; who asks for the same meanwhile waits for the same reading.</summary>
    /// <param name="mark">The state as who asks has seen it.</param>
    /// <param name="what">What is asked for.</param>
    /// <param name="of">Of which day, time or cow; null where there is but one.</param>
    /// <param name="read">Reads it, on a thread of its own.</param>
    /// <param name="cancellation">Stops the waiting, not the reading: others may wait for it.</param>
    public Task<T> OfAsync<T>(StateMark mark, string what, object? of, Func<Task<T>> read, CancellationToken cancellation)
    {
        Task<T> found;
        lock (_gate)
        {
            if (mark != _mark)
                (_mark, _known) = (mark, []);
            if (_known.TryGetValue((what, of), out var known) && !known.IsFaulted && !known.IsCanceled)
            {
                found = (Task<T>)known;
            }
            else
            {
                found = Task.Run(read, CancellationToken.None);
                _known[(what, of)] = found;
            }
        }

        return found.WaitAsync(cancellation);
    }
}

/// <summary>Tells one state from another.</summary>
/// <param name="Changes">How often the derived state has been changed.</param>
/// <param name="Written">The newest entry of people that was read.</param>
/// <param name="Newest">The newest crossing; the clock's time while there is none.</param>
internal readonly record struct StateMark(long Changes, long Written, DateTimeOffset Newest);
