using System.Text.Json;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The chute's page and what makes an app of it. By share link the same answers stand below the link: <see cref="ShareRoutes"/>.</summary>
internal static class ChuteRoutes
{
    private const string Next = "next";

    private static readonly string s_worker = Asset.Text("chute/worker.js");

    public static void MapChute(this IEndpointRouteBuilder pages)
    {
        pages.MapGet("/visits/{visit}/chute", (HttpContext http, BarnStore store, string visit) => OfFarmAsync(http, store, visit, Page)).ExcludeFromDescription();
        pages.MapGet("/visits/{visit}/chute/worker.js", (HttpContext http, BarnStore store, string visit) => OfFarmAsync(http, store, visit, Worker)).ExcludeFromDescription();
        pages.MapGet("/visits/{visit}/chute/app.webmanifest", (HttpContext http, BarnStore store, string visit) => OfFarmAsync(http, store, visit, Manifest)).ExcludeFromDescription();
        pages.MapGet("/visits/{visit}/chute/data", FarmDataAsync).ExcludeFromDescription();
    }

    /// <summary>The page: the same for every cow and list, so that a phone can keep it.</summary>
    public static IResult Page(HttpContext http, ChuteApp app)
    {
        http.Response.Headers.CacheControl = "no-cache";
        return new RazorComponentResult<ChutePage>(new { Way = app });
    }

    /// <summary>The script that keeps the page on the phone. It names the version, so that a phone sees a new one.</summary>
    public static IResult Worker(HttpContext http, ChuteApp app)
    {
        http.Response.Headers.CacheControl = "no-cache";
        http.Response.Headers["Service-Worker-Allowed"] = app.Path;
        var told = JsonSerializer.Serialize(new { version = app.Version, path = app.Path, files = app.Files }, JsonSerializerOptions.Web);
        return TypedResults.Text(s_worker.Replace("= APP;", $"= {told};", StringComparison.Ordinal), "text/javascript; charset=utf-8");
    }

    /// <summary>What makes the page an app that a phone installs (W3C Web Application Manifest).</summary>
    public static IResult Manifest(HttpContext http, ChuteApp app)
    {
        http.Response.Headers.CacheControl = "no-cache";
        var manifest = new Dictionary<string, object>
        {
            ["name"] = $"GaitWatch {ChuteTexts.Title}",
            ["short_name"] = ChuteTexts.Title,
            ["id"] = app.Path,
            ["start_url"] = app.Path,
            ["scope"] = app.Path,
            ["display"] = "standalone",
            ["background_color"] = "#f3f1ea",
            ["theme_color"] = "#114c42",
            ["icons"] = new[]
            {
                new { src = Asset.Address("chute-icon-192.png"), sizes = "192x192", type = "image/png" },
                new { src = Asset.Address("chute-icon-512.png"), sizes = "512x512", type = "image/png" },
                new { src = Asset.Address("chute-icon.svg"), sizes = "any", type = "image/svg+xml" },
            },
        };
        return TypedResults.Json(manifest, JsonSerializerOptions.Web, "application/manifest+json");
    }

    /// <summary>All that the chute needs to know of the farm.</summary>
    public static async Task<IResult> DataAsync(HttpContext http, BarnStore store, DateOnly? visit, TimeProvider time)
    {
        http.Response.Headers.CacheControl = "no-store";
        return TypedResults.Ok(await ChuteData.ReadAsync(store, visit, time.GetUtcNow(), http.RequestAborted));
    }

    /// <summary>The day of a visit in a route; null with true for the next one.</summary>
    public static bool TryDay(string visit, out DateOnly? day)
    {
        day = null;
        if (visit == Next)
            return true;
        if (!Days.TryParse(visit, out var said))
            return false;
        day = said;
        return true;
    }

    /// <summary>Says that a route names no visit.</summary>
    public static Refusal NoVisit(string visit) => Refusal.NotFound("visit", $"visit is '{(visit.Length > 60 ? visit[..60] + "…" : visit)}' in the route: 'next', or a date such as 2026-03-02.");

    private static async Task<IResult> OfFarmAsync(HttpContext http, BarnStore store, string visit, Func<HttpContext, ChuteApp, IResult> answer)
    {
        if (TryDay(visit, out _))
            return answer(http, ChuteApp.OfFarm(visit));
        var refusal = NoVisit(visit);
        return Readers.WantsPage(http.Request)
            ? await PageRoutes.TroubleAsync(store, refusal.Status, refusal.Title, [refusal.Faults.ToString()], "/", http.RequestAborted)
            : refusal.ToResult();
    }

    private static async Task<IResult> FarmDataAsync(HttpContext http, BarnStore store, string visit, TimeProvider time) =>
        TryDay(visit, out var day) ? await DataAsync(http, store, day, time) : NoVisit(visit).ToResult();
}
