using System.Globalization;
using System.Text;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Barn.Tests;

/// <summary>Things a test needs and does not care about.</summary>
internal static class Some
{
    public static readonly DateTimeOffset Now = new(2026, 3, 2, 6, 0, 0, TimeSpan.Zero);

    public static readonly TimeZoneInfo Zone = TimeZoneInfo.FindSystemTimeZoneById("Europe/Amsterdam");

    public static BarnOptions Options { get; } = new()
    {
        Calendar = new FarmCalendar(Zone),
        Lameness = new LamenessOptions { TimeZone = Zone },
    };

    public static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    /// <summary>A passage as a device sends it.</summary>
    public static string PassageJson(string id, DateTimeOffset startedAt, string? eid = "982000123456789", double lh = 139.0) => string.Create(
        CultureInfo.InvariantCulture,
        $$"""
        { "v": 1, "id": "{{id}}", "eid": {{(eid is null ? "null" : $"\"{eid}\"")}}, "startedAt": "{{Time(startedAt)}}", "endedAt": "{{Time(startedAt.AddSeconds(4))}}",
          "loadKg": { "lf": 168.2, "rf": 165.9, "lh": {{lh}}, "rh": 141.3 } }
        """);
}
