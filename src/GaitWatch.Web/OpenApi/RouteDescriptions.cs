using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Says of a route what the OpenAPI document tells of it.</summary>
internal static class RouteDescriptions
{
    public static RouteHandlerBuilder Describe(this RouteHandlerBuilder route, string tag, string summary) =>
        route.WithTags(tag).WithSummary(summary).Refuses(StatusCodes.Status503ServiceUnavailable);

    /// <summary>What it answers when all is well.</summary>
    public static RouteHandlerBuilder Gives<T>(this RouteHandlerBuilder route, int status = StatusCodes.Status200OK) => route.Produces<T>(status);

    /// <summary>It may lead to another address.</summary>
    public static RouteHandlerBuilder Moves(this RouteHandlerBuilder route) => route.Produces(StatusCodes.Status308PermanentRedirect);

    /// <summary>It may store what it is given without being able to show it yet.</summary>
    public static RouteHandlerBuilder Stores(this RouteHandlerBuilder route) => route.Produces<StoredView>(StatusCodes.Status202Accepted);

    /// <summary>Problems it may answer with.</summary>
    public static RouteHandlerBuilder Refuses(this RouteHandlerBuilder route, params ReadOnlySpan<int> statuses)
    {
        foreach (var status in statuses)
            route.Produces<HttpValidationProblemDetails>(status, "application/problem+json");
        return route;
    }

    /// <summary>The body it takes. The handler reads and checks it itself, so that each refusal has its own words.</summary>
    public static RouteHandlerBuilder Takes<T>(this RouteHandlerBuilder route, string mediaType) =>
        route.WithMetadata(new BodyDescription(typeof(T), mediaType));
}

/// <summary>The body of a route as the OpenAPI document shows it.</summary>
/// <param name="Shape">Its members.</param>
/// <param name="MediaType">Its kind.</param>
internal sealed record BodyDescription(Type Shape, string MediaType);
