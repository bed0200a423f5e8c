using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What was found and done at the chute, and how the treated feet fare.</summary>
internal static class FindingRoutes
{
    public static void MapFindings(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/findings", ListAsync)
            .Describe("Findings", "What was found and done at the chute, oldest first.")
            .Gives<IReadOnlyList<FindingView>>().Refuses(400, 404);
        api.MapGet("/api/cows/{cow}/recovery", RecoveryAsync)
            .Describe("Findings", "One assessment per treated foot of a cow.")
            .Gives<IReadOnlyList<RecoveryView>>().Refuses(404);
    }

    private static async Task<Results<Ok<IReadOnlyList<FindingView>>, ProblemHttpResult>> ListAsync(
        HttpContext http, BarnStore store, string? cow, string? from, string? to, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        query.Span(from, to);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        if (!string.IsNullOrEmpty(cow) && await store.Reader.CowAsync(cow, http.RequestAborted) is null)
            return Refusal.UnknownCow(cow).ToResult();
        return TypedResults.Ok(Paging.Cut<FindingView>(http, part, []));
    }

    private static async Task<Results<Ok<IReadOnlyList<RecoveryView>>, ProblemHttpResult>> RecoveryAsync(BarnStore store, string cow, CancellationToken cancellation)
    {
        cow = RouteNames.Read(cow);
        return await store.Reader.CowAsync(cow, cancellation) is null
            ? Refusal.UnknownCow(cow).ToResult()
            : TypedResults.Ok<IReadOnlyList<RecoveryView>>([]);
    }
}
