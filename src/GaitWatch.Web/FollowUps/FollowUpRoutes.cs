using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What the farm itself has to do on a day.</summary>
internal static class FollowUpRoutes
{
    public static void MapFollowUps(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/follow-ups", ListAsync)
            .Describe("Follow-ups", "What the farm itself has to do on a day, before the trimmer comes again: wraps off, blocks to look at.")
            .Gives<IReadOnlyList<FollowUpView>>().Refuses(400);
        api.MapPost("/api/follow-ups/{id}/done", DoneAsync)
            .Describe("Follow-ups", "Says that the farm did it, and gives the follow-up as it stands then. The body may be left out.")
            .Takes<FollowUpDoneBody>("application/json")
            .Gives<FollowUpView>().Stores().Refuses(400, 404, 409, 413, 415);
    }

    private static async Task<Results<Ok<IReadOnlyList<FollowUpView>>, ProblemHttpResult>> ListAsync(
        HttpContext http, BarnStore store, string? date, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var day = query.Day("date", date);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var tasks = await store.Reader.FollowUpsAsync(day ?? await store.Reader.NewestDayAsync(http.RequestAborted), http.RequestAborted);
        return TypedResults.Ok(Paging.Cut(http, part, [.. tasks.Select(FollowUpView.Of)]));
    }

    private static Task<IResult> DoneAsync(HttpContext http, string id, BarnStore store, WriteDesk desk, DoFollowUp route) =>
        desk.ServeAsync(http, route, async decision =>
        {
            var asked = (FollowUp)decision.Account!;
            return TypedResults.Ok(FollowUpView.Of(await store.Reader.FollowUpAsync(asked.Id, http.RequestAborted) ?? asked));
        });
}
