using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Tells people, who want a page, from programs.</summary>
internal static class Readers
{
    public static bool WantsPage(HttpRequest request) =>
        !request.Path.StartsWithSegments("/api", StringComparison.Ordinal)
        && !request.Path.StartsWithSegments("/assets", StringComparison.Ordinal)
        && request.GetTypedHeaders().Accept.Any(accepted => accepted.MediaType.Equals("text/html", StringComparison.OrdinalIgnoreCase));
}
