using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The herd register.</summary>
internal static class CowRoutes
{
    public static void MapCows(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/cows", ListAsync)
            .Describe("Cows", "The herd register: registered cows and those known by their tag alone, in order of their numbers; with find those of whose number or tag it is a part, best first.")
            .Gives<IReadOnlyList<CowView>>().Refuses(400);
        api.MapGet("/api/cows/{cow}", OneAsync)
            .Describe("Cows", "One cow, by her number or her tag.")
            .Gives<CowView>().Refuses(404);
        api.MapPut("/api/cows/{cow}", RegisterAsync)
            .Describe("Cows", "Registers a cow, or what holds of her from some instant on; her history is kept.")
            .Takes<CowBody>("application/json")
            .Gives<CowView>().Gives<CowView>(StatusCodes.Status201Created).Stores().Refuses(400, 413, 415);
        api.MapPost("/api/herd", ImportAsync)
            .Describe("Cows", "Imports the register from CSV. A bad row is named by its line and nothing is taken, unless partial is true.")
            .Takes<string>("text/csv")
            .Gives<HerdImportView>().Stores().Refuses(400, 413, 415);
    }

    private static async Task<Results<Ok<IReadOnlyList<CowView>>, ProblemHttpResult>> ListAsync(HttpContext http, BarnStore store, string? find, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var part = query.Page(page, pageSize);
        return query.Faults.Any
            ? query.Refusal.ToResult()
            : TypedResults.Ok(await Paging.ReadAsync(http, part, p => string.IsNullOrWhiteSpace(find)
                ? store.Reader.CowsAsync(p, http.RequestAborted)
                : store.Reader.FindCowsAsync(find, p, http.RequestAborted)));
    }

    private static async Task<Results<Ok<CowView>, ProblemHttpResult>> OneAsync(BarnStore store, string cow, CancellationToken cancellation)
    {
        cow = await store.Reader.CowMeantAsync(RouteNames.Read(cow), cancellation);
        return await store.Reader.CowAsync(cow, cancellation) is { } found ? TypedResults.Ok(found) : Refusal.UnknownCow(cow).ToResult();
    }

    private static async Task<IResult> RegisterAsync(HttpContext http, string cow, BarnStore store, WriteDesk desk, RegisterCow route)
    {
        cow = RouteNames.Read(cow);
        var isNew = (await store.Reader.RegisterAsync(http.RequestAborted)).HistoryOf(cow).IsEmpty;
        return await desk.ServeAsync(http, route, async _ =>
        {
            var found = await store.Reader.CowAsync(cow, http.RequestAborted);
            return isNew ? TypedResults.Created($"/api/cows/{RouteNames.Write(cow)}", found) : TypedResults.Ok(found);
        });
    }

    private static Task<IResult> ImportAsync(HttpContext http, WriteDesk desk, ImportHerd route, string? partial, string? at) =>
        desk.ServeAsync(
            http, route,
            decision => Task.FromResult<IResult>(TypedResults.Ok((HerdImportView)decision.Account!)),
            decision => decision.Account is HerdImportView view
                ? decision.Refused!.ToResult(new("taken", view.Taken), new("rejected", view.Rejected), new("notices", view.Notices))
                : decision.Refused!.ToResult());
}
