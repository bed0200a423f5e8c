using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Passages: a cow's, everybody's, and the force curves of one.</summary>
internal static class PassageRoutes
{
    public static void MapPassages(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/cows/{cow}/passages", OfCowAsync)
            .Describe("Passages", "A cow's passages that started in the span, oldest first, rejected ones too.")
            .Gives<IReadOnlyList<PassageView>>().Refuses(400, 404);
        api.MapGet("/api/passages", ListAsync)
            .Describe("Passages", "All passages that started in the span, oldest first, nobody's too.")
            .Gives<IReadOnlyList<PassageView>>().Refuses(400);
        api.MapGet("/api/passages/{id}/curves", CurvesAsync)
            .Describe("Passages", "The force curve of each foot, from the kept frames.")
            .Gives<CurvesView>().Refuses(404);
    }

    private static async Task<IResult> OfCowAsync(
        HttpContext http, BarnStore store, string cow, string? from, string? to, string? page, string? pageSize)
    {
        cow = await store.Reader.CowMeantAsync(RouteNames.Read(cow), http.RequestAborted);
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        if (await store.Reader.CowAsync(cow, http.RequestAborted) is null)
            return Refusal.UnknownCow(cow).ToResult();
        return TypedResults.Ok(await Paging.ReadAsync(http, part, p => store.Reader.PassagesOfAsync(cow, begin, end, p, http.RequestAborted)));
    }

    private static async Task<IResult> ListAsync(
        HttpContext http, BarnStore store, string? from, string? to, string? platform, string? quality, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        bool? accepted = query.OneOf("quality", quality, "accepted", "rejected") is { } word ? word == "accepted" : null;
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        Task<IReadOnlyList<PassageView>> Read(Page p) =>
            store.Reader.PassagesAsync(begin, end, string.IsNullOrEmpty(platform) ? null : platform, accepted, p, http.RequestAborted);
        return part is null
            ? TypedResults.Ok(WholeList.InStretchesAsync(Read, await Read(WholeList.Stretch(1))))
            : TypedResults.Ok(await Paging.ReadAsync(http, part, Read));
    }

    private static async Task<Results<Ok<CurvesView>, ProblemHttpResult>> CurvesAsync(BarnStore store, WebOptions options, string id, CancellationToken cancellation)
    {
        var (curves, refused) = await Curves.ReadAsync(store, options.Gait, RouteNames.Read(id), cancellation);
        return refused is null ? TypedResults.Ok(curves!) : refused.ToResult();
    }
}
