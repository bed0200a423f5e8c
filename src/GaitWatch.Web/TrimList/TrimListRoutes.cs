using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace GaitWatch.Web;

/// <summary>The trimmer's list for a visit.</summary>
internal static class TrimListRoutes
{
    private const string Json = "application/json";
    private const string Csv = "text/csv";
    private const string Plain = "text/plain";

    public static void MapTrimList(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/trim-list", ListAsync)
            .Describe("Trim list", "The list for a visit in the order through the chute; where Accept asks for it as CSV (text/csv) or to be read on a terminal and on paper (text/plain).")
            .Produces<IReadOnlyList<TrimListRowView>>(StatusCodes.Status200OK, Json, Csv, Plain).Refuses(400);
        api.MapPut("/api/visits/{date}/cows/{cow}", DecideAsync)
            .Describe("Trim list", "Puts a cow on a visit's list by hand, or takes her off it, with the reason.")
            .Takes<ListDecisionBody>(Json)
            .Gives<ListDecisionView>().Stores().Refuses(400, 404, 413, 415);
        api.MapDelete("/api/visits/{date}/cows/{cow}", TakeBackAsync)
            .Describe("Trim list", "Takes back what was decided by hand about a cow and a visit: the rules hold again.")
            .Gives<ListDecisionView>().Stores().Refuses(400, 404, 413, 415);
        api.MapPut("/api/visits/{date}/cows/{cow}/done", TickAsync)
            .Describe("Trim list", "Ticks a cow off a visit's list. The body may be left out.")
            .Takes<ListTickBody>(Json)
            .Gives<ListTickView>().Stores().Refuses(400, 404, 413, 415);
        api.MapDelete("/api/visits/{date}/cows/{cow}/done", UntickAsync)
            .Describe("Trim list", "Takes a tick back.")
            .Gives<ListTickView>().Stores().Refuses(400, 404, 413, 415);
        api.MapPut("/api/visits/{date}/cows/{cow}/place", MoveAsync)
            .Describe("Trim list", "Puts a cow elsewhere in the order of a visit's list.")
            .Takes<ListPlaceBody>(Json)
            .Gives<ListPlaceView>().Stores().Refuses(400, 404, 413, 415);
    }

    private static async Task<IResult> ListAsync(HttpContext http, BarnStore store, string? visit, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var day = query.Day("visit", visit);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var list = await store.Reader.TrimListAsync(day, http.RequestAborted);
        http.Response.Headers.Vary = HeaderNames.Accept;
        // A list for paper or a spreadsheet is whole; only the JSON is paged.
        return Accepting.Wanted(http.Request, Json, Csv, Plain) switch
        {
            Csv => TypedResults.Text(TrimListCsv.Render(list), "text/csv; charset=utf-8"),
            Plain => TypedResults.Text(TrimListText.Render(list), "text/plain; charset=utf-8"),
            _ => TypedResults.Ok(Paging.Cut(http, part, [.. list.Rows.Select(TrimListRowView.Of)])),
        };
    }

    private static Task<IResult> DecideAsync(HttpContext http, string date, string cow, WriteDesk desk, DecideOnList route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(TypedResults.Ok((ListDecisionView)decision.Account!)));

    private static Task<IResult> TakeBackAsync(HttpContext http, string date, string cow, string? at, WriteDesk desk, TakeBackOnList route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(TypedResults.Ok((ListDecisionView)decision.Account!)));

    private static Task<IResult> TickAsync(HttpContext http, string date, string cow, WriteDesk desk, TickOnList route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(TypedResults.Ok((ListTickView)decision.Account!)));

    private static Task<IResult> UntickAsync(HttpContext http, string date, string cow, string? at, WriteDesk desk, UntickOnList route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(TypedResults.Ok((ListTickView)decision.Account!)));

    private static Task<IResult> MoveAsync(HttpContext http, string date, string cow, WriteDesk desk, MoveOnList route) =>
        desk.ServeAsync(http, route, decision => Task.FromResult<IResult>(TypedResults.Ok((ListPlaceView)decision.Account!)));
}
