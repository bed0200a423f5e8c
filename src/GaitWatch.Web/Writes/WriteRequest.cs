using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>What a person or a program enters, whether it comes over HTTP now or from a recording.</summary>
/// <param name="Route">The values of the route, such as <c>cow</c>.</param>
/// <param name="Query">The query parameters.</param>
/// <param name="Body">The body as it came; empty where none was sent.</param>
/// <param name="ArrivedAt">When it arrived: what <c>at</c> is where none is given.</param>
internal sealed record WriteRequest(RouteValueDictionary Route, IQueryCollection Query, ReadOnlyMemory<byte> Body, DateTimeOffset ArrivedAt)
{
    /// <summary>A value of the route.</summary>
    public string Name(string key) => RouteNames.Read((string)Route[key]!);

    /// <summary>A day of the route; a fault where it is none.</summary>
    public DateOnly Day(string key, Faults faults)
    {
        var text = Name(key);
        if (!Days.TryParse(text, out var day))
            faults.Add(key, $"{key} is '{(text.Length > 60 ? text[..60] + "…" : text)}' in the route: a date such as 2026-03-02 is needed.");
        return day;
    }

    /// <summary>When it holds: as the body says, else the query parameter <c>at</c>, else its arrival.</summary>
    public DateTimeOffset At(JsonFields fields)
    {
        var at = fields.Instant("at");
        if (at is null && Query["at"].ToString() is { Length: > 0 } text)
        {
            if (Instants.TryParse(text, out var instant))
                at = instant;
            else
                fields.Faults.Add("at", $"at is '{(text.Length > 60 ? text[..60] + "…" : text)}': a time such as 2026-03-02T05:14:07.250Z is needed.");
        }

        return ArrivalTime.Of(at, ArrivedAt, fields.Faults);
    }
}
