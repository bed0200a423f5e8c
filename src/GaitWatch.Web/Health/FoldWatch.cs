using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Sees whether the analysis gets on: with work waiting, the mark of what is folded has to move.</summary>
/// <remarks>It looks whenever readiness is asked for; safe to use from several threads.</remarks>
internal sealed class FoldWatch(BarnStore store, TimeProvider time, WebOptions options)
{
    private readonly Lock _gate = new();
    private long _folded = -1;
    private DateTimeOffset _movedAt;

    /// <summary>How long it has been standing still with work waiting; null while it gets on.</summary>
    public (TimeSpan For, long Waiting)? Stuck()
    {
        lock (_gate)
        {
            var now = time.GetUtcNow();
            var waiting = store.Progress.Appended - store.Progress.Folded;
            if (store.Progress.Folded != _folded || waiting <= 0)
            {
                _folded = store.Progress.Folded;
                _movedAt = now;
            }

            return waiting > 0 && now - _movedAt > options.StuckAfter ? (now - _movedAt, waiting) : null;
        }
    }
}
