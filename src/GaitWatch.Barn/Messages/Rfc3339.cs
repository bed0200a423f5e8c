using System.Globalization;

namespace GaitWatch.Barn;

/// <summary>Reads instants as RFC 3339 section 5.6 writes them: date, time and offset, none of them left out.</summary>
internal static class Rfc3339
{
    /// <summary>No platform clock that was ever set tells an earlier time; one that lost its battery tells 1970.</summary>
    public static readonly DateTimeOffset Earliest = new(2000, 1, 1, 0, 0, 0, TimeSpan.Zero);

    /// <summary>Far enough for every use and near enough that spans can be added without overflow.</summary>
    public static readonly DateTimeOffset Latest = new(2200, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private static readonly string[] Formats = [.. new[] { "", ".f", ".ff", ".fff", ".ffff", ".fffff", ".ffffff", ".fffffff" }
        .Select(fraction => $"yyyy-MM-dd'T'HH:mm:ss{fraction}zzz")];

    /// <summary>Reads an instant, cut to milliseconds and in UTC; false when the text is none.</summary>
    public static bool TryParse(string text, out DateTimeOffset instant)
    {
        instant = default;
        // The shortest is 2026-03-02T05:14:07Z; digits of a second beyond the seventh are below the clock's resolution.
        if (text.Length is < 20 or > 40 || text[10] is not ('T' or 't'))
            return false;
        var offsetAt = text[^1] is 'Z' or 'z' ? text.Length - 1 : text.Length - 6;
        if (offsetAt < 19)
            return false;
        var fraction = text.AsSpan(19, offsetAt - 19);
        if (fraction.Length == 1 || (fraction.Length > 1 && (fraction[0] != '.' || fraction[1..].ContainsAnyExceptInRange('0', '9'))))
            return false;
        var offset = offsetAt == text.Length - 1 ? "+00:00" : text.AsSpan(offsetAt);
        if (offset[0] is not ('+' or '-'))
            return false;
        var canonical = string.Concat(text.AsSpan(0, 10), "T", text.AsSpan(11, 8), fraction[..Math.Min(fraction.Length, 8)]);
        if (!DateTimeOffset.TryParseExact(
                string.Concat(canonical, offset), Formats, CultureInfo.InvariantCulture, DateTimeStyles.AdjustToUniversal, out var read))
            return false;
        instant = new DateTimeOffset(read.UtcTicks - (read.UtcTicks % TimeSpan.TicksPerMillisecond), TimeSpan.Zero);
        return true;
    }

    /// <summary>An instant as the contract writes it: UTC with milliseconds.</summary>
    public static string Show(DateTimeOffset instant) =>
        instant.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);
}
