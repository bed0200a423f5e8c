using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;

namespace GaitWatch;

/// <summary>Options that several verbs have.</summary>
internal static class CommonOptions
{
    /// <summary><c>--url</c>: where the running service is.</summary>
    public static Option<Uri?> Url() => new("--url")
    {
        Description = "Where the running service listens. Default: the first address of GaitWatch:Http:Urls; where nothing listens, the store is used.",
        HelpName = "http://host:port",
        CustomParser = result =>
        {
            var text = Single(result);
            if (Uri.TryCreate(text, UriKind.Absolute, out var url) && (url.Scheme == Uri.UriSchemeHttp || url.Scheme == Uri.UriSchemeHttps))
                return url;
            result.AddError($"--url is '{text}': an address such as http://127.0.0.1:8080.");
            return null;
        },
    };

    /// <summary><c>--json</c>: the API's JSON instead of a table.</summary>
    public static Option<bool> Json() => new("--json") { Description = "Print the API's JSON as it is." };

    /// <summary>A day, such as <c>2026-03-02</c>.</summary>
    public static Option<DateOnly?> Day(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "YYYY-MM-DD",
        CustomParser = result =>
        {
            var text = Single(result);
            if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day))
                return day;
            result.AddError($"{name} is '{text}': a day such as 2026-03-02.");
            return null;
        },
    };

    /// <summary>An instant, such as <c>2026-03-02T10:20:00Z</c>.</summary>
    public static Option<DateTimeOffset?> Instant(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "2026-03-02T10:20:00Z",
        CustomParser = result =>
        {
            var text = Single(result);
            if (text.Length > 10 && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var at) && (text.EndsWith('Z') || text.AsSpan(10).ContainsAny('+', '-')))
                return at;
            result.AddError($"{name} is '{text}': a time with its offset from UTC, such as 2026-03-02T10:20:00Z or 2026-03-02T11:20:00+01:00.");
            return null;
        },
    };

    private static string Single(ArgumentResult result) => result.Tokens.Count == 1 ? result.Tokens[0].Value : "";
}
