using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>
/// On the ports set up for sharing nothing answers but share links and what their pages bring along: such a port can be opened to
/// the outside, while the rest of the service, which knows no login, stays inside.
/// </summary>
internal sealed class ShareOnly(RequestDelegate next, WebOptions options)
{
    private readonly HashSet<int> _ports = [.. options.ShareEndpoints.Select(endpoint => endpoint.Port)];

    public Task InvokeAsync(HttpContext http) =>
        !_ports.Contains(http.Connection.LocalPort) || IsShared(http.Request.Path)
            ? next(http)
            : Refusal.NotFound("path", "Only share links answer at this address.").ToResult().ExecuteAsync(http);

    private static bool IsShared(PathString path) =>
        path.StartsWithSegments("/share", StringComparison.Ordinal) || path.StartsWithSegments("/assets", StringComparison.Ordinal);
}
