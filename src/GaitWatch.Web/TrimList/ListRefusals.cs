using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Why nothing can be said of a cow on a visit's list.</summary>
internal static class ListRefusals
{
    /// <summary>The refusal where no visit is planned on the day or nobody knows the cow; null when there is none.</summary>
    public static async Task<Refusal?> OfAsync(BarnStore store, DateOnly day, string cow, CancellationToken cancellation)
    {
        if (!(await store.Reader.VisitsAsync(cancellation)).Visits.Any(planned => planned.IsOrWasOn(day)))
            return Refusal.NotFound("date", $"date is '{FarmTimes.Machine(day)}', where no visit is planned; GET /api/visits lists those that are.");
        return await store.Reader.CowAsync(cow, cancellation) is null ? Refusal.UnknownCow(cow) : null;
    }
}
