using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>
/// Refuses writes that a browser sends on behalf of another site (cross-site request forgery). Browsers say where a request
/// comes from in <c>Sec-Fetch-Site</c> and <c>Origin</c>; programs that are no browser send neither and pass.
/// </summary>
internal sealed class SameOrigin(RequestDelegate next)
{
    public Task InvokeAsync(HttpContext http)
    {
        var request = http.Request;
        if (HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method) || HttpMethods.IsOptions(request.Method))
            return next(http);

        var site = request.Headers["Sec-Fetch-Site"].ToString();
        if (site.Length > 0)
            return site is "same-origin" or "none" ? next(http) : Refuse(http, "Sec-Fetch-Site", site);

        var origin = request.Headers.Origin.ToString();
        // Only host and port are compared: behind a proxy that ends TLS the scheme differs.
        return origin.Length == 0 || (Uri.TryCreate(origin, UriKind.Absolute, out var from) && from.Authority.Equals(Authority(request), StringComparison.OrdinalIgnoreCase))
            ? next(http)
            : Refuse(http, "Origin", origin);
    }

    private static string Authority(HttpRequest request) => Uri.TryCreate($"{request.Scheme}://{request.Host.Value}", UriKind.Absolute, out var own) ? own.Authority : "";

    private static Task Refuse(HttpContext http, string header, string found) =>
        new Refusal(
            StatusCodes.Status403Forbidden, "Writes are taken from GaitWatch's own pages and from programs only.",
            Faults.Of(header, $"{header} is '{found}': a page of another site may not write here."))
        .ToResult().ExecuteAsync(http);
}
