using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>How the platforms fare.</summary>
internal static class PlatformRoutes
{
    public static void MapPlatforms(this IEndpointRouteBuilder api) =>
        api.MapGet("/api/platforms", ListAsync)
            .Describe("Platforms", "Every platform's health, and what is wrong with it.")
            .Gives<IReadOnlyList<PlatformView>>();

    private static async Task<Ok<IReadOnlyList<PlatformView>>> ListAsync(BarnStore store, CancellationToken cancellation) =>
        TypedResults.Ok(await store.Reader.PlatformsAsync(cancellation));
}
