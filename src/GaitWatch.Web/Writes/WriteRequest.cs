using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What a person or a program enters, whether it comes over HTTP now or from a recording.</summary>
/// <param name="Route">The values of the route, such as <c>cow</c>.</param>
/// <param name="Query">The query parameters.</param>
/// <param name="Body">The body as it came.</param>
/// <param name="ArrivedAt">When it arrived: what <c>at</c> is where none is given.</param>
internal sealed record WriteRequest(RouteValueDictionary Route, IQueryCollection Query, ReadOnlyMemory<byte> Body, DateTimeOffset ArrivedAt)
{
    /// <summary>A value of the route.</summary>
    public string Name(string key) => RouteNames.Read((string)Route[key]!);
}
