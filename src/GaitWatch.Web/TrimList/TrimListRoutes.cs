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
    public static void MapTrimList(this IEndpointRouteBuilder api) =>
        api.MapGet("/api/trim-list", ListAsync)
            .Describe("Trim list", "The list for a visit in the order through the chute; as CSV where Accept asks for text/csv.")
            .Produces<IReadOnlyList<TrimListRowView>>(StatusCodes.Status200OK, "application/json", "text/csv").Refuses(400);

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
        return WantsCsv(http.Request)
            ? TypedResults.Text(TrimListCsv.Render(list), "text/csv; charset=utf-8")
            : TypedResults.Ok(Paging.Cut(http, part, [.. list.Rows.Select(TrimListRowView.Of)]));
    }

    private static bool WantsCsv(HttpRequest request)
    {
        var accepted = request.GetTypedHeaders().Accept;
        double Weight(string type) => accepted.Where(a => a.MatchesMediaType(type) && !a.MatchesAllTypes).Select(a => a.Quality ?? 1).DefaultIfEmpty(0).Max();
        return Weight("text/csv") > Weight("application/json");
    }
}
