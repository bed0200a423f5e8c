using GaitWatch.Store;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Extensions;

namespace GaitWatch.Web;

/// <summary>Serves a part of a list and says in a <c>Link</c> header (RFC 8288) where the neighbouring parts are.</summary>
internal static class Paging
{
    /// <summary>Reads the wanted part, or the whole list when no part is named.</summary>
    /// <param name="http">The request; its answer gets the header.</param>
    /// <param name="page">The wanted part; null for the whole.</param>
    /// <param name="read">Reads a part.</param>
    public static async Task<IReadOnlyList<T>> ReadAsync<T>(HttpContext http, Page? page, Func<Page, Task<IReadOnlyList<T>>> read)
    {
        if (page is not { } part)
            return await read(Page.All);
        var items = await read(part);
        // A full part may be the last one: one more item tells.
        var more = items.Count == part.Size && (await read(new Page(checked(part.Number * part.Size) + 1, 1))).Count > 0;
        Announce(http, part, more);
        return items;
    }

    /// <summary>Serves a part of a list that is at hand.</summary>
    public static IReadOnlyList<T> Cut<T>(HttpContext http, Page? page, IReadOnlyList<T> all)
    {
        if (page is not { } part)
            return all;
        var skip = (long)(part.Number - 1) * part.Size;
        Announce(http, part, more: skip + part.Size < all.Count);
        return skip >= all.Count ? [] : [.. all.Skip((int)skip).Take(part.Size)];
    }

    private static void Announce(HttpContext http, Page part, bool more)
    {
        var links = new List<string> { Link(http.Request, part, 1, "first") };
        if (part.Number > 1)
            links.Add(Link(http.Request, part, part.Number - 1, "prev"));
        if (more)
            links.Add(Link(http.Request, part, part.Number + 1, "next"));
        http.Response.Headers.Link = string.Join(", ", links);
    }

    private static string Link(HttpRequest request, Page part, int number, string relation)
    {
        var query = new QueryBuilder(request.Query.Where(q => q.Key is not ("page" or "pageSize")).SelectMany(q => q.Value, (q, v) => KeyValuePair.Create(q.Key, v ?? "")))
        {
            { "page", number.ToString(System.Globalization.CultureInfo.InvariantCulture) },
            { "pageSize", part.Size.ToString(System.Globalization.CultureInfo.InvariantCulture) },
        };
        return $"<{request.PathBase.ToUriComponent()}{request.Path.ToUriComponent()}{query.ToQueryString()}>; rel=\"{relation}\"";
    }
}
