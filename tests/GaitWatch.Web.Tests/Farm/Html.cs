using System.Net;
using System.Text.RegularExpressions;

namespace GaitWatch.Web.Tests;

/// <summary>Reads pages simply: what a person sees, and where links lead.</summary>
internal static partial class Html
{
    /// <summary>The text of a page, or of a part of it, in one line.</summary>
    public static string Text(string html)
    {
        var body = html[Math.Max(0, html.IndexOf("<main", StringComparison.Ordinal))..];
        return Blanks().Replace(WebUtility.HtmlDecode(Tags().Replace(body, " ")), " ").Replace(" ,", ",", StringComparison.Ordinal).Replace(" .", ".", StringComparison.Ordinal).Trim();
    }

    /// <summary>The elements of a kind that carry a class, with all they hold; elements of the kind may not be nested.</summary>
    public static IReadOnlyList<string> Elements(string html, string kind, string cssClass) =>
        [.. Regex.Matches(html, $"<{kind}\\b[^>]*class=\"[^\"]*\\b{Regex.Escape(cssClass)}\\b[^\"]*\".*?</{kind}>", RegexOptions.Singleline).Select(match => match.Value)];

    /// <summary>Every address a page names.</summary>
    public static IReadOnlyList<string> Addresses(string html) =>
        [.. Links().Matches(html).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value))];

    /// <summary>Every address that a page leads to or loads, forms apart.</summary>
    public static IReadOnlyList<string> Leads(string html) =>
        [.. LeadsTo().Matches(html).Select(match => WebUtility.HtmlDecode(match.Groups[1].Value))];

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"[\s\u00A0]+")]
    private static partial Regex Blanks();

    [GeneratedRegex("(?:href|src)=\"([^\"]*)\"")]
    private static partial Regex LeadsTo();

    [GeneratedRegex("(?:href|src|action)=\"([^\"]*)\"")]
    private static partial Regex Links();
}
