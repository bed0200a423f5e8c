namespace GaitWatch.Web;

/// <summary>When a write holds: what it says itself, else its arrival.</summary>
internal static class ArrivalTime
{
    // A clock may be wrong by hours, a time zone by one; a day ahead is a mistake (the contract's rule for messages).
    private static readonly TimeSpan MostAhead = TimeSpan.FromDays(1);

    public static DateTimeOffset Of(DateTimeOffset? at, DateTimeOffset arrivedAt, Faults faults)
    {
        if (at > arrivedAt + MostAhead)
            faults.Add("at", $"at is {at.Value.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}, more than a day ahead of now: the time at which it happened is needed.");
        return at ?? arrivedAt;
    }
}
