using System.Globalization;

namespace GaitWatch.Web;

/// <summary>Dates as the contract writes them, <c>2026-03-02</c>.</summary>
internal static class Days
{
    public static bool TryParse(string? text, out DateOnly day) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out day);

    public static string Write(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
