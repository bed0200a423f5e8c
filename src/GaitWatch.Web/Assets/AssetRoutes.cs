using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace GaitWatch.Web;

/// <summary>Serves what the pages bring along.</summary>
internal static class AssetRoutes
{
    public static void MapAssets(this IEndpointRouteBuilder pages) =>
        pages.MapGet("/assets/{name}", Get).ExcludeFromDescription();

    private static IResult Get(HttpContext http, string name, string? v)
    {
        if (!Asset.All.TryGetValue(name, out var asset))
            return TypedResults.NotFound();
        http.Response.Headers.CacheControl = v == asset.Hash ? "public, max-age=31536000, immutable" : "no-cache";
        return TypedResults.Bytes(asset.Content, asset.MediaType, entityTag: new EntityTagHeaderValue($"\"{asset.Hash}\""));
    }
}
