using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>The trimmer's visits.</summary>
internal static class VisitRoutes
{
    public static void MapVisits(this IEndpointRouteBuilder api) =>
        api.MapGet("/api/visits", () => TypedResults.Ok<IReadOnlyList<VisitView>>([]))
            .Describe("Visits", "Planned visits of the trimmer, by date.")
            .Gives<IReadOnlyList<VisitView>>();
}
