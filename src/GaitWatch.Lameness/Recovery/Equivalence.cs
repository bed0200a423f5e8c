using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness;

/// <summary>
/// Two one-sided t tests: is a mean shown to lie within a band around 0? Source: Schuirmann D.J. 1987, J Pharmacokinet Biopharm
/// 15:657-680.
/// </summary>
public static class Equivalence
{
    /// <summary>The larger of the two p values: below alpha the mean is shown to lie within the band.</summary>
    /// <param name="values">Independent values, at least two, in the band's unit.</param>
    /// <param name="band">Half width of the band, above 0.</param>
    /// <returns>0 to 1; 1 where nothing can be shown from fewer than two values.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The band is not above 0.</exception>
    public static double PValue(IReadOnlyList<double> values, double band)
    {
        if (!(band > 0))
            throw new ArgumentOutOfRangeException(nameof(band), band, "The half width of a band is above 0.");
        if (values.Count < 2)
            return 1;
        var mean = values.Average();
        var error = Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1) / values.Count);
        var room = band - Math.Abs(mean);
        if (error == 0)
            return room > 0 ? 0 : 1;
        // The upper tail as the lower tail of the mirror image: 1 - CDF would lose the small p values that matter.
        return StudentT.CDF(0, 1, values.Count - 1, -room / error);
    }
}
