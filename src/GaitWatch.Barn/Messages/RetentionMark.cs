namespace GaitWatch.Barn;

/// <summary>
/// From when on frames and tags are kept. What began earlier has been analysed for good and comes too late. The mark only
/// ever moves forward.
/// </summary>
/// <remarks>Safe to use from several threads.</remarks>
public sealed class RetentionMark
{
    private long _ticks = DateTimeOffset.MinValue.UtcTicks;

    /// <summary>The instant; the beginning of time while nothing has been pruned.</summary>
    public DateTimeOffset KeptFrom => new(Interlocked.Read(ref _ticks), TimeSpan.Zero);

    /// <summary>Moves the mark forward; an earlier instant changes nothing.</summary>
    public void MoveTo(DateTimeOffset keptFrom)
    {
        var wanted = keptFrom.UtcTicks;
        var seen = Interlocked.Read(ref _ticks);
        while (seen < wanted)
        {
            var before = Interlocked.CompareExchange(ref _ticks, wanted, seen);
            if (before == seen)
                return;
            seen = before;
        }
    }
}
