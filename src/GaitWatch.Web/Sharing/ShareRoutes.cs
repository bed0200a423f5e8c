using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>
/// The farm's page that gives out a share link, and everything that answers below a link: the visit's list, its chute, and taking what is
/// found there. A link opens no other route.
/// </summary>
internal static class ShareRoutes
{
    public static void MapShare(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/visits/{visit}/share", GivePageAsync).ExcludeFromDescription();
        pages.MapGet("/api/visits/{date}/share", GiveAsync)
            .Describe("Visits", "Gives out a link that opens this visit's list and chute to whoever holds it, until the day after the visit has ended.")
            .Gives<ShareLinkView>().Refuses(400, 404);

        pages.MapGet("/share/{token}", ListAsync).ExcludeFromDescription();
        pages.MapGet("/share/{token}/chute", (HttpContext http, ShareLinks links, string token) => AsPageAsync(http, links, token, app => ChuteRoutes.Page(http, app))).ExcludeFromDescription();
        pages.MapGet("/share/{token}/chute/worker.js", (HttpContext http, ShareLinks links, string token) => WithinAsync(http, links, token, app => ChuteRoutes.Worker(http, app))).ExcludeFromDescription();
        pages.MapGet("/share/{token}/chute/app.webmanifest", (HttpContext http, ShareLinks links, string token) => WithinAsync(http, links, token, app => ChuteRoutes.Manifest(http, app))).ExcludeFromDescription();
        pages.MapGet("/share/{token}/chute/data", async (HttpContext http, ShareLinks links, BarnStore store, TimeProvider time, string token) =>
            await links.OpenAsync(token, http.RequestAborted) is ({ } said, null) ? await ChuteRoutes.DataAsync(http, store, said.Visit, time) : await RefuseAsync(http, links, token)).ExcludeFromDescription();
        pages.MapPost("/share/{token}/api/cows/{cow}/findings", RecordAsync).ExcludeFromDescription();
        pages.MapDelete("/share/{token}/api/findings/{id}", WithdrawAsync).ExcludeFromDescription();
    }

    private static async Task<Results<Ok<ShareLinkView>, ProblemHttpResult>> GiveAsync(HttpContext http, ShareLinks links, BarnStore store, string date)
    {
        var query = new QueryReader(store.Options.Calendar);
        var day = query.Day("date", date);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        http.Response.Headers.CacheControl = "no-store";
        return await links.GiveAsync(day, http.Request, http.RequestAborted) is { } link
            ? TypedResults.Ok(new ShareLinkView(link.Visit, link.Address.AbsoluteUri, link.EndsAt))
            : Refusal.NotFound("date", FormattableString.Invariant($"date is {day:yyyy-MM-dd}: no visit that lies ahead is planned there; GET /api/visits lists those that are.")).ToResult();
    }

    private static async Task<IResult> GivePageAsync(HttpContext http, ShareLinks links, BarnStore store, WebOptions options, string visit)
    {
        http.Response.Headers.CacheControl = "no-store";
        if (!ChuteRoutes.TryDay(visit, out var day) || await links.GiveAsync(day, http.Request, http.RequestAborted) is not { } link)
            return await PageRoutes.TroubleAsync(store, StatusCodes.Status404NotFound, ShareTexts.NoVisit, [ShareTexts.NoVisitMore], "/", http.RequestAborted);
        var page = await PageContext.ReadAsync(store, ShareTexts.Title, "", http.RequestAborted);
        return new RazorComponentResult<SharePage>(new { Page = page, Given = link, IsAlone = !options.ShareEndpoints.IsEmpty });
    }

    private static async Task<IResult> ListAsync(HttpContext http, ShareLinks links, BarnStore store, string token)
    {
        http.Response.Headers.CacheControl = "no-store";
        if (await links.OpenAsync(token, http.RequestAborted) is not ({ Visit: var visit }, null))
            return await RefusePageAsync(http, links, token);
        var model = await VisitModel.ReadAsync(store, visit, null, http.RequestAborted);
        return new RazorComponentResult<SharedListPage>(new { Model = model, Chute = ChuteApp.OfShare(token).Path, EndsAt = links.EndOf(visit) });
    }

    private static async Task<IResult> RecordAsync(HttpContext http, ShareLinks links, BarnStore store, WriteDesk desk, RecordFinding route, string token, string cow) =>
        (await links.OpenAsync(token, http.RequestAborted)).Refused is { } refused ? refused.ToResult() : await FindingRoutes.RecordAsync(http, cow, store, desk, route);

    // Only what was entered since the link was given out: what the farm or another trimmer entered before is not the holder's to take back.
    private static async Task<IResult> WithdrawAsync(HttpContext http, ShareLinks links, BarnStore store, WriteDesk desk, WithdrawFinding route, string token, string id, string? at)
    {
        var (said, refused) = await links.OpenAsync(token, http.RequestAborted);
        if (refused is not null)
            return refused.ToResult();
        var kept = (await store.Reader.FindingsAsync(http.RequestAborted)).Find(RouteNames.Read(id));
        return kept is not null && kept.Versions[0].EnteredAt < said!.IssuedAt
            ? Refusal.Conflict("id", "id is of a finding that is older than the link: only the farm can take it back.").ToResult()
            : await FindingRoutes.WithdrawAsync(http, id, at, store, desk, route);
    }

    private static async Task<IResult> WithinAsync(HttpContext http, ShareLinks links, string token, Func<ChuteApp, IResult> answer) =>
        await links.OpenAsync(token, http.RequestAborted) is (not null, null) ? answer(ChuteApp.OfShare(token)) : await RefuseAsync(http, links, token);

    private static async Task<IResult> AsPageAsync(HttpContext http, ShareLinks links, string token, Func<ChuteApp, IResult> answer) =>
        await links.OpenAsync(token, http.RequestAborted) is (not null, null) ? answer(ChuteApp.OfShare(token)) : await RefusePageAsync(http, links, token);

    private static async Task<IResult> RefuseAsync(HttpContext http, ShareLinks links, string token) => (await links.OpenAsync(token, http.RequestAborted)).Refused!.ToResult();

    private static async Task<IResult> RefusePageAsync(HttpContext http, ShareLinks links, string token)
    {
        var refused = (await links.OpenAsync(token, http.RequestAborted)).Refused!;
        return new RazorComponentResult<ShareEndedPage>(new { Sentence = ShareTexts.EndedWhy(refused.Status == StatusCodes.Status410Gone) }) { StatusCode = refused.Status };
    }
}

/// <summary>A share link on the wire.</summary>
/// <param name="Visit">The visit's day.</param>
/// <param name="Address">Where it leads.</param>
/// <param name="EndsAt">When it ends.</param>
internal sealed record ShareLinkView(DateOnly Visit, string Address, DateTimeOffset EndsAt);
