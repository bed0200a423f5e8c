using System.Globalization;
using System.Text.RegularExpressions;

namespace GaitWatch.Web;

/// <summary>Instants as RFC 3339 writes them: date, time, and an offset from UTC, which may not be left out.</summary>
internal static partial class Instants
{
    public static bool TryParse(string? text, out DateTimeOffset instant)
    {
        instant = default;
        // In a query a plus sign arrives as a space unless it was encoded; no RFC 3339 time has one in that place.
        if (text is null || !Shape().IsMatch(text))
            return false;
        var plain = text.Length > 11 ? text[..11].Replace(' ', 'T') + text[11..].Replace(' ', '+') : text;
        if (!DateTimeOffset.TryParse(plain, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out var read))
            return false;
        instant = read.ToUniversalTime();
        return true;
    }

    [GeneratedRegex(@"^\d{4}-\d{2}-\d{2}[Tt ]\d{2}:\d{2}:\d{2}(\.\d{1,9})?([Zz]|[+\- ]\d{2}:\d{2})$", RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
