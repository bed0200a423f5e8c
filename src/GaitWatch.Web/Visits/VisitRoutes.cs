using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The trimmer's visits.</summary>
internal static class VisitRoutes
{
    public static void MapVisits(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/visits", ListAsync)
            .Describe("Visits", "Visits of the trimmer, past ones too, by date.")
            .Gives<IReadOnlyList<VisitForm>>().Refuses(400);
        api.MapPut("/api/visits/{date}", PlanAsync)
            .Describe("Visits", "Plans a visit, changes a planned one, or, where the body names another day, moves it there.")
            .Takes<VisitBody>("application/json")
            .Gives<VisitForm>().Gives<VisitForm>(StatusCodes.Status201Created).Stores().Refuses(400, 404, 409, 413, 415);
        api.MapDelete("/api/visits/{date}", CancelAsync)
            .Describe("Visits", "Cancels a visit and gives it as it was planned.")
            .Gives<VisitForm>().Stores().Refuses(400, 404, 413, 415);
    }

    private static async Task<Results<Ok<IReadOnlyList<VisitForm>>, ProblemHttpResult>> ListAsync(HttpContext http, BarnStore store, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var book = await store.Reader.VisitsAsync(http.RequestAborted);
        return TypedResults.Ok(Paging.Cut(http, part, [.. book.Visits.Select(planned => VisitForm.Of(planned.Visit))]));
    }

    private static Task<IResult> PlanAsync(HttpContext http, string date, BarnStore store, WriteDesk desk, PlanVisit route) =>
        desk.ServeAsync(http, route, async decision =>
        {
            var (visit, isNew) = (PlanVisit.Planned)decision.Account!;
            var shown = VisitForm.Of((await store.Reader.VisitsAsync(http.RequestAborted)).On(visit.Date)?.Visit ?? visit);
            return isNew ? TypedResults.Created($"/api/visits/{date}", shown) : TypedResults.Ok(shown);
        });

    private static Task<IResult> CancelAsync(HttpContext http, string date, string? at, WriteDesk desk, CancelVisit route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(TypedResults.Ok((VisitForm)decision.Account!)));
}
