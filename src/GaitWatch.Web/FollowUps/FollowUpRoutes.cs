using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What the farm itself has to do on a day.</summary>
internal static class FollowUpRoutes
{
    public static void MapFollowUps(this IEndpointRouteBuilder api) =>
        api.MapGet("/api/follow-ups", List)
            .Describe("Follow-ups", "What the farm itself has to do on a day: wraps off, blocks to look at.")
            .Gives<IReadOnlyList<FollowUpView>>().Refuses(400);

    private static Results<Ok<IReadOnlyList<FollowUpView>>, ProblemHttpResult> List(BarnStore store, string? date)
    {
        var query = new QueryReader(store.Options.Calendar);
        query.Day("date", date);
        return query.Faults.Any ? query.Refusal.ToResult() : TypedResults.Ok<IReadOnlyList<FollowUpView>>([]);
    }
}
