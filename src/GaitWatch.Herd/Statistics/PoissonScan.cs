using MathNet.Numerics;
using MathNet.Numerics.Distributions;

namespace GaitWatch.Herd;

/// <summary>
/// How likely chance alone brings so many events together: the scan statistic of a Poisson process, the largest count in any
/// window of a given length that slides over the whole time. Source: Naus J.I. 1982, J Am Stat Assoc 77:177-183 (the formulas
/// from memory; checked against simulation in the tests).
/// </summary>
public static class PoissonScan
{
    /// <summary>Probability of at least so many events in some window.</summary>
    /// <param name="count">The largest count seen in a window, at least 0.</param>
    /// <param name="expectedInWindow">Expected events in one window, above 0.</param>
    /// <param name="windows">Length of the whole time in windows, at least 1.</param>
    /// <returns>0 to 1.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double PValue(int count, double expectedInWindow, double windows)
    {
        if (!(expectedInWindow > 0) || !double.IsFinite(expectedInWindow))
            throw new ArgumentOutOfRangeException(nameof(expectedInWindow), expectedInWindow, "Expected events in a window are above 0.");
        if (!(windows >= 1) || !double.IsFinite(windows))
            throw new ArgumentOutOfRangeException(nameof(windows), windows, "The whole time is at least one window long.");
        if (count <= 0)
            return 1;
        if (count == 1)
            return 1 - Math.Exp(-expectedInWindow * windows);
        // No window can hold more unless some first, fixed one may: with one window there is nothing to slide over.
        if (windows == 1)
            return 1 - F(count - 1, expectedInWindow);
        var two = Two(count, expectedInWindow);
        var three = Three(count, expectedInWindow);
        if (two <= 0)
            return 1;
        // Between one window and two the same ratio holds to the accuracy of the approximation.
        var none = two * Math.Pow(Math.Clamp(three / two, 0, 1), windows - 2);
        return Math.Clamp(1 - none, 0, 1);
    }

    // Probability that no window within a time of two windows holds k events.
    private static double Two(int k, double psi) =>
        F(k - 1, psi) * F(k - 1, psi) - (k - 1) * P(k, psi) * P(k - 2, psi) - (k - 1 - psi) * P(k, psi) * F(k - 3, psi);

    // The same within three windows.
    private static double Three(int k, double psi)
    {
        var first = 2 * P(k, psi) * F(k - 1, psi) * ((k - 1) * F(k - 2, psi) - psi * F(k - 3, psi));
        var second = 0.5 * P(k, psi) * P(k, psi)
            * ((k - 1.0) * (k - 2) * F(k - 3, psi) - 2.0 * (k - 2) * psi * F(k - 4, psi) + psi * psi * F(k - 5, psi));
        double third = 0, fourth = 0;
        for (var r = 1; r < k; r++)
            third += P(2 * k - r, psi) * F(r - 1, psi) * F(r - 1, psi);
        for (var r = 2; r < k; r++)
            fourth += P(2 * k - r, psi) * P(r, psi) * ((r - 1) * F(r - 2, psi) - psi * F(r - 3, psi));
        return Math.Pow(F(k - 1, psi), 3) - first + second + third - fourth;
    }

    private static double P(int k, double psi) => k < 0 ? 0 : Math.Exp(k * Math.Log(psi) - psi - SpecialFunctions.FactorialLn(k));

    private static double F(int k, double psi) => k < 0 ? 0 : Poisson.CDF(psi, k);
}
