using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Template;

namespace GaitWatch.Web;

/// <summary>
/// A route that takes what a person enters. It decides from the request and the state alone, so that a recorded write is judged
/// exactly as one that comes over HTTP.
/// </summary>
internal abstract class WriteRoute
{
    private readonly TemplateMatcher _matcher;

    protected WriteRoute(string method, string pattern, string mediaType, int mostBytes)
    {
        Method = method;
        Pattern = pattern;
        MediaType = mediaType;
        MostBytes = mostBytes;
        _matcher = new TemplateMatcher(TemplateParser.Parse(pattern.TrimStart('/')), []);
    }

    public string Method { get; }

    public string Pattern { get; }

    /// <summary>The kind of body it takes.</summary>
    public string MediaType { get; }

    /// <summary>The longest body it takes, bytes.</summary>
    public int MostBytes { get; }

    /// <summary>Whether it may come without a body; then only what the route and the query say is known.</summary>
    public virtual bool BodyIsOptional => false;

    /// <summary>Whether it must see what people entered before it.</summary>
    public virtual bool ReadsWrites => ReadsState;

    /// <summary>Whether it must see the state that everything entered before it has led to.</summary>
    public virtual bool ReadsState => false;

    /// <summary>Judges a write.</summary>
    public abstract Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation);

    /// <summary>Whether a recorded write is for this route, and the values of the route if it is.</summary>
    public bool Matches(string method, string path, RouteValueDictionary values) =>
        method.Equals(Method, StringComparison.OrdinalIgnoreCase) && _matcher.TryMatch(path, values);
}
