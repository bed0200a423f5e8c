using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What came in, and what of it could not be used.</summary>
internal static class IngestRoutes
{
    public static void MapIngest(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/ingest", CountsAsync)
            .Describe("Ingest", "How much came in since the store was made.")
            .Gives<IngestView>();
        api.MapGet("/api/ingest/rejected", RejectedAsync)
            .Describe("Ingest", "Messages that could not be used and arrived in the span, newest first, each with its reason.")
            .Gives<IReadOnlyList<RejectedView>>().Refuses(400);
    }

    private static async Task<Ok<IngestView>> CountsAsync(BarnStore store, CancellationToken cancellation) =>
        TypedResults.Ok(await store.Reader.IngestAsync(cancellation));

    private static async Task<Results<Ok<IReadOnlyList<RejectedView>>, ProblemHttpResult>> RejectedAsync(
        HttpContext http, BarnStore store, string? from, string? to, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        var part = query.Page(page, pageSize);
        return query.Faults.Any
            ? query.Refusal.ToResult()
            : TypedResults.Ok(await Paging.ReadAsync(http, part, p => store.Reader.RejectedAsync(begin, end, p, http.RequestAborted)));
    }
}
