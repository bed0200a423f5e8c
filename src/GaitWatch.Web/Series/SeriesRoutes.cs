using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>How the export to InfluxDB stands, what it refused, and how what was kept before is brought.</summary>
internal static class SeriesRoutes
{
    private const int MostBytes = 4096;

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
            .Takes<BackfillBody>("application/json")
            .Gives<SeriesView>(StatusCodes.Status202Accepted).Refuses(400, 409, 413, 415);
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

    private static async Task<Results<Accepted<SeriesView>, ProblemHttpResult>> BackfillAsync(HttpRequest request, BarnStore store, CancellationToken cancellation)
    {
        var (body, notTaken) = BodyReader.IsAbsent(request) ? (default, null) : await BodyReader.ReadAsync(request, "application/json", MostBytes, cancellation);
        if (notTaken is not null)
            return notTaken.ToResult();
        if (!JsonFields.TryParseOptional(body, out var fields, out var refused))
            return refused.ToResult();
        var from = fields.InstantOrDay("since", store.Options.Calendar);
        if (fields.Faults.Any)
            return Refusal.Invalid(fields.Faults).ToResult();
        if (!store.Series.IsOn)
            return Refusal.Conflict("since", "No export is set up: set GaitWatch:Influx:Url, Token, Org and Bucket, then start the service again.").ToResult();
        await store.Backfill.StartAsync(from, cancellation);
        return TypedResults.Accepted("/api/series", await SeriesView.OfAsync(store, cancellation));
    }
}
