using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>
/// Everything that people entered, read once. Writes are only ever added, so what was read stays true and only what is newer
/// need be fetched.
/// </summary>
/// <remarks>Safe to use from several threads.</remarks>
internal sealed class WriteBook
{
    private readonly Lock _gate = new();
    private Book _book = Book.Empty;
    private long _last;

    /// <summary>The newest sequence number that has been read.</summary>
    public long Last
    {
        get
        {
            lock (_gate)
                return _last;
        }
    }

    /// <summary>Adds what was found to be newer, and gives everything.</summary>
    /// <param name="newer">Rows after some <see cref="Last"/> read before, in order; those known already are skipped.</param>
    public Book Add(IReadOnlyCollection<(long Seq, string Body)> newer)
    {
        lock (_gate)
        {
            FarmWrite[] fresh = [.. newer.Where(row => row.Seq > _last).Select(row => StoreJson.Read<FarmWrite>(row.Body))];
            if (fresh.Length > 0)
            {
                _book = _book.With(fresh);
                _last = newer.Max(row => row.Seq);
            }

            return _book;
        }
    }
}
