using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The morning's question: which cows are flagged?</summary>
internal static class FlagRoutes
{
    public static void MapFlags(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/flags", ListAsync)
            .Describe("Flags", "Alerts open at the end of a farm day (the newest day: now), worst first.")
            .Gives<IReadOnlyList<AlertView>>().Refuses(400);
        api.MapGet("/api/not-seen", async (BarnStore store, CancellationToken cancellation) => TypedResults.Ok(await store.Reader.NotSeenAsync(cancellation)))
            .Describe("Flags", "Cows with an open flag, or a treated foot not shown to be recovered, who have not crossed for more than a day; who has been missing longest first.")
            .Gives<IReadOnlyList<NotSeenView>>();
    }

    private static async Task<Results<Ok<IReadOnlyList<AlertView>>, ProblemHttpResult>> ListAsync(
        HttpContext http, BarnStore store, string? date, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var day = query.Day("date", date);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var flags = await store.Reader.FlagsAsync(day ?? await store.Reader.NewestDayAsync(http.RequestAborted), http.RequestAborted);
        return TypedResults.Ok(Paging.Cut(http, part, flags));
    }
}
