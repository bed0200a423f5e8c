using System.Globalization;

namespace GaitWatch.Web;

/// <summary>Figures for people: few digits, each with its unit, never parted from it by a line break.</summary>
internal static class Figures
{
    private const char Space = '\u00A0';

    public static string Percent(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0}{Space}%");

    /// <summary>A share of body weight, in per cent.</summary>
    public static string Share(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0}{Space}%");

    public static string Kilograms(double kg) => string.Create(CultureInfo.InvariantCulture, $"{kg:0}{Space}kg");

    public static string KilogramsFine(double kg) => string.Create(CultureInfo.InvariantCulture, $"{kg:0.0}{Space}kg");

    public static string Speed(double metresPerSecond) => string.Create(CultureInfo.InvariantCulture, $"{metresPerSecond:0.00}{Space}m/s");

    public static string Fraction(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);

    public static string Count(long count) => count.ToString("N0", CultureInfo.InvariantCulture);

    public static string Count(long count, string one, string many) => $"{Count(count)}{Space}{(count == 1 ? one : many)}";
}
