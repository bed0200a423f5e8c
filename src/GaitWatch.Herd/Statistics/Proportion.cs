using MathNet.Numerics.Distributions;

namespace GaitWatch.Herd;

/// <summary>
/// So many of so many, with an interval that stays within 0 to 1 and holds for few as for many: Wilson's score interval. Source:
/// Wilson E.B. 1927, J Am Stat Assoc 22:209-212; recommended by Newcombe R.G. 1998, Stat Med 17:857-872 (method 3).
/// </summary>
public readonly record struct Proportion
{
    /// <summary>So many of so many.</summary>
    /// <param name="count">How many; 0 to <paramref name="of"/>.</param>
    /// <param name="of">Of how many; at least 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The counts are none.</exception>
    public Proportion(int count, int of)
    {
        if (of < 0 || count < 0 || count > of)
            throw new ArgumentOutOfRangeException(nameof(count), count, $"{count} of {of}: a count lies between 0 and the number it is of.");
        Count = count;
        Of = of;
    }

    /// <summary>How many.</summary>
    public int Count { get; }

    /// <summary>Of how many.</summary>
    public int Of { get; }

    /// <summary>The fraction, 0 to 1; null of none.</summary>
    public double? Value => Of == 0 ? null : (double)Count / Of;

    /// <summary>Wilson's interval, 0 to 1; of none it is everything.</summary>
    /// <param name="confidence">Its confidence, above 0 and below 1.</param>
    public (double Lower, double Upper) Interval(double confidence = 0.95)
    {
        if (!(confidence > 0 && confidence < 1))
            throw new ArgumentOutOfRangeException(nameof(confidence), confidence, "A confidence lies between 0 and 1, such as 0.95.");
        if (Of == 0)
            return (0, 1);
        var z = Normal.InvCDF(0, 1, 1 - (1 - confidence) / 2);
        double n = Of, p = (double)Count / Of, zz = z * z;
        var middle = (p + zz / (2 * n)) / (1 + zz / n);
        var half = z / (1 + zz / n) * Math.Sqrt(p * (1 - p) / n + zz / (4 * n * n));
        // At the ends the two terms cancel; rounding must not leave a hair beside 0 or 1.
        return (Count == 0 ? 0 : Math.Max(middle - half, 0), Count == Of ? 1 : Math.Min(middle + half, 1));
    }
}
