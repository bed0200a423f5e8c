using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>How the export to InfluxDB stands, what it refused, and how what was kept before is brought.</summary>
internal static class SeriesRoutes
{
    public static void MapSeries(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/series", async (BarnStore store, CancellationToken cancellation) => TypedResults.Ok(await SeriesView.OfAsync(store, cancellation)))
            .Describe("Series", "How the export to InfluxDB stands.")
            .Gives<SeriesView>();
        api.MapGet("/api/series/refused", RefusedAsync)
            .Describe("Series", "Points that InfluxDB refused, newest first, each with its reason.")
            .Gives<IReadOnlyList<SetAsideView>>().Refuses(400);
        api.MapPost("/api/series/backfill", BackfillAsync)
            .Describe("Series", "Removes from InfluxDB what it shows from an instant on and tells it anew from the store; goes on by itself, also after a restart.")
            .Gives<SeriesView>(StatusCodes.Status202Accepted).Refuses(400, 409);
    }

    private static async Task<Results<Ok<IReadOnlyList<SetAsideView>>, ProblemHttpResult>> RefusedAsync(
        HttpContext http, BarnStore store, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var part = query.Page(page, pageSize);
        return query.Faults.Any
            ? query.Refusal.ToResult()
            : TypedResults.Ok(await Paging.ReadAsync(http, part, p => store.Series.SetAsideAsync(p, http.RequestAborted)));
    }

    private static async Task<Results<Accepted<SeriesView>, ProblemHttpResult>> BackfillAsync(BarnStore store, string? since, CancellationToken cancellation)
    {
        var query = new QueryReader(store.Options.Calendar);
        var from = query.Instant("since", since);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        if (!store.Series.IsOn)
            return Refusal.Conflict("since", "No export is set up: set GaitWatch:Influx:Url, Token, Org and Bucket, then start the service again.").ToResult();
        await store.Backfill.StartAsync(from, cancellation);
        return TypedResults.Accepted("/api/series", await SeriesView.OfAsync(store, cancellation));
    }
}
