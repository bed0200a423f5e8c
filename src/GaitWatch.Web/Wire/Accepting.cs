using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Which of several media types an answer should have.</summary>
internal static class Accepting
{
    /// <summary>What is asked for by name and most; the first where that leaves it open.</summary>
    public static string Wanted(HttpRequest request, params string[] offered)
    {
        var accepted = request.GetTypedHeaders().Accept;
        double Weight(string type) => accepted.Where(a => a.MatchesMediaType(type) && !a.MatchesAllTypes && !a.MatchesAllSubTypes).Select(a => a.Quality ?? 1).DefaultIfEmpty(0).Max();
        return offered.MaxBy(Weight)!;
    }
}
