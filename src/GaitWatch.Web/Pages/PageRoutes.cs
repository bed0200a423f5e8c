using System.Globalization;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The pages: made here from the store, whole when they arrive, working without script.</summary>
internal static class PageRoutes
{
    public static void MapPages(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/", MorningAsync).ExcludeFromDescription();
        pages.MapGet("/cows", CowsAsync).ExcludeFromDescription();
        pages.MapGet("/cows/{cow}", CowAsync).ExcludeFromDescription();
        pages.MapGet("/passages/{id}", PassageAsync).ExcludeFromDescription();
        pages.MapGet("/recovery", RecoveryAsync).ExcludeFromDescription();
        pages.MapGet("/herd", HerdAsync).ExcludeFromDescription();
        pages.MapGet("/platforms", PlatformsAsync).ExcludeFromDescription();
        pages.MapVisitPages();
        pages.MapLive();
        pages.MapPost("/follow-ups/{id}/done", DoneFromPage.TakeAsync).ExcludeFromDescription();
        pages.MapPost("/alerts/{id}/close", CloseFromPage.TakeAsync).ExcludeFromDescription();
    }

    /// <summary>A page that says what could not be done.</summary>
    public static async Task<IResult> TroubleAsync(BarnStore store, int status, string title, IReadOnlyList<string> sentences, string back, CancellationToken cancellation)
    {
        var page = await PageContext.ReadAsync(store, title, "", cancellation);
        return new RazorComponentResult<TroublePage>(new { Page = page, Sentences = (IReadOnlyList<string>)[.. sentences.Select(Sentences.InWords)], Back = back }) { StatusCode = status };
    }

    private static async Task<IResult> MorningAsync(HttpContext http, BarnStore store, WebOptions options, string? closed, string? done)
    {
        NeverKeep(http);
        return new RazorComponentResult<MorningPage>(new { Model = await MorningModel.ReadAsync(store, options, closed, done, DoneFromPage.Who(http), http.RequestAborted) });
    }

    private static async Task<IResult> CowsAsync(HttpContext http, BarnStore store, string? q, string? page)
    {
        NeverKeep(http);
        var number = int.TryParse(page, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n is >= 1 and <= 100_000 ? n : 1;
        var model = await CowsModel.ReadAsync(store, q, number, http.RequestAborted);
        // Who types a whole number wants that cow.
        return model is { Search.Length: > 0, Rows: [var only] } && only.Cow.Cow.Equals(model.Search, StringComparison.OrdinalIgnoreCase)
            ? TypedResults.LocalRedirect($"/cows/{RouteNames.Write(only.Cow.Cow)}")
            : new RazorComponentResult<CowsPage>(new { Model = model });
    }

    private static async Task<IResult> CowAsync(HttpContext http, BarnStore store, string cow)
    {
        NeverKeep(http);
        cow = RouteNames.Read(cow);
        return await CowModel.ReadAsync(store, cow, http.Request.Query, http.RequestAborted) is { } model
            ? new RazorComponentResult<CowPage>(new { Model = model })
            : await TroubleAsync(store, StatusCodes.Status404NotFound, CowTexts.NoneOf(cow), [CowTexts.NoneOfMeaning], "/cows", http.RequestAborted);
    }

    private static async Task<IResult> PassageAsync(HttpContext http, BarnStore store, WebOptions options, string id)
    {
        NeverKeep(http);
        return await PassageModel.ReadAsync(store, options, RouteNames.Read(id), http.RequestAborted) is { } model
            ? new RazorComponentResult<PassagePage>(new { Model = model })
            : await TroubleAsync(store, StatusCodes.Status404NotFound, PassageTexts.NoneOf, [PassageTexts.NoneOfMeaning], "/cows", http.RequestAborted);
    }

    private static async Task<IResult> RecoveryAsync(HttpContext http, BarnStore store)
    {
        NeverKeep(http);
        return new RazorComponentResult<RecoveryPage>(new { Model = await RecoveryModel.ReadAsync(store, http.RequestAborted) });
    }

    private static async Task<IResult> HerdAsync(HttpContext http, BarnStore store)
    {
        NeverKeep(http);
        return new RazorComponentResult<HerdPage>(new { Model = await HerdModel.ReadAsync(store, http.Request.Query, http.RequestAborted) });
    }

    private static async Task<IResult> PlatformsAsync(HttpContext http, BarnStore store)
    {
        NeverKeep(http);
        return new RazorComponentResult<PlatformsPage>(new { Model = await PlatformsModel.ReadAsync(store, http.RequestAborted) });
    }

    // A page tells how things stand now: one from before the last crossing would mislead.
    internal static void NeverKeep(HttpContext http) => http.Response.Headers.CacheControl = "no-store";
}
