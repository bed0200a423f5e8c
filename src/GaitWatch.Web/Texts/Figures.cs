using System.Globalization;

namespace GaitWatch.Web;

/// <summary>Figures for people in the language of the request: few digits, each with its unit, never parted from it by a line break.</summary>
internal static class Figures
{
    /// <summary>Between a figure and its unit: no line is broken there.</summary>
    public const char Space = '\u00A0';

    public static string Percent(double value) => Show(value, "0", "%");

    /// <summary>Per cent with a digit behind the point.</summary>
    public static string PercentFine(double value) => Show(value, "0.0", "%");

    /// <summary>A share of body weight, in per cent.</summary>
    public static string Share(double share) => PercentFine(100 * share);

    /// <summary>How sure a share is, percentage points.</summary>
    public static string ShareError(double error) => Show(100 * error, "0.00", "%");

    /// <summary>A weight, in kilograms or pounds as the reader chose.</summary>
    public static string Weight(double kg) => Show(InUnit(kg), "0", Units.Current);

    /// <summary>The same with a digit behind the point.</summary>
    public static string WeightFine(double kg) => Show(InUnit(kg), "0.0", Units.Current);

    /// <summary>A weight in the unit that the reader chose.</summary>
    public static double InUnit(double kg) => Units.ArePounds ? kg / Units.KilogramsPerPound : kg;

    public static string Speed(double metresPerSecond) => Show(metresPerSecond, "0.00", "m/s");

    public static string Seconds(double seconds) => Show(seconds, "0.00", "s");

    public static string Fraction(double value) => value.ToString("0.0", CultureInfo.CurrentCulture);

    public static string Count(long count) => count.ToString("N0", CultureInfo.CurrentCulture);

    /// <summary>A whole number as a form takes it.</summary>
    public static string Plain(int count) => count.ToString(CultureInfo.InvariantCulture);

    private static string Show(double value, string format, string unit) => $"{value.ToString(format, CultureInfo.CurrentCulture)}{Space}{unit}";
}
