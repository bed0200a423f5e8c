using CsCheck;

namespace GaitWatch.Lameness.Tests;

public sealed class RecoveryCurveFitTests
{
    // scipy.optimize.least_squares, Huber loss, same bounds (Reference/make_reference.py). Tolerance: the flat bottom of the loss.
    [Fact]
    public void The_robust_fit_is_scipys_also_with_outliers()
    {
        foreach (var reference in ReferenceValues.Of("fits").EnumerateArray())
        {
            var fitted = RecoveryCurveFit.Of(reference.Numbers("days"), reference.Numbers("drops"), reference.Number("sd"))!;
            Assert.Equal(reference.Number("start"), fitted.Curve.StartPercent, 1e-4);
            Assert.Equal(reference.Number("end"), fitted.Curve.EndPercent, 1e-4);
            Assert.Equal(reference.Number("tau"), fitted.Curve.TauDays, 1e-4);
        }
    }

    // scipy.optimize.curve_fit: at twice the deviation no residual passes Huber's threshold, so that the robust interval is the
    // usual one, at the larger of the two scales.
    [Fact]
    public void The_interval_is_scipys_at_the_larger_scale()
    {
        var reference = ReferenceValues.Of("plain");
        var (days, sd) = (reference.Numbers("days"), 2 * reference.Number("sd"));
        var fitted = RecoveryCurveFit.Of(days, reference.Numbers("drops"), sd)!;
        Assert.Equal(reference.Number("tau"), fitted.Curve.TauDays, 1e-4);
        var larger = Math.Max(sd, reference.Number("residualScale")) / reference.Number("residualScale");
        Assert.Equal(reference.Number("halfWidthAtLast") * larger, fitted.HalfWidthAt(days[^1]), 1e-4);
        Assert.True(fitted.HasShape);
    }

    [Fact]
    public void A_curve_without_noise_is_found_again() => Gen.Select(Gen.Double[6, 40], Gen.Double[-3, 4], Gen.Double[1.5, 25])
        .Sample((start, end, tau) =>
        {
            var curve = new RecoveryCurve(start, end, tau);
            double[] days = [.. Enumerable.Range(0, 60).Select(day => day + 0.4)];
            var fitted = RecoveryCurveFit.Of(days, [.. days.Select(curve.At)], 1)!.Curve;
            return Math.Abs(fitted.StartPercent - start) < 1e-2 && Math.Abs(fitted.EndPercent - end) < 1e-2 && Math.Abs(fitted.TauDays - tau) < 1e-2;
        });

    [Fact]
    public void Every_parameter_stays_within_its_bounds_whatever_comes() => Gen.Double[-1e4, 1e4].Array[5, 30].Sample(drops =>
    {
        var fitted = RecoveryCurveFit.Of([.. Enumerable.Range(1, drops.Length).Select(day => (double)day)], drops, 2)!;
        var (curve, width) = (fitted.Curve, fitted.HalfWidthAt(drops.Length));
        return curve.StartPercent is >= -20 and <= 100 && curve.EndPercent is >= -5 and <= 100
            && curve.TauDays is >= RecoveryCurveFit.ShortestTauDays and <= RecoveryCurveFit.LongestTauDays && double.IsFinite(width);
    });

    [Fact]
    public void A_level_has_no_shape()
    {
        double[] days = [.. Enumerable.Range(1, 20).Select(day => (double)day)];
        var fitted = RecoveryCurveFit.Of(days, [.. days.Select(day => 6 + (day % 2 == 0 ? 1.0 : -1.0))], 1.5)!;
        Assert.False(fitted.HasShape);
        Assert.Equal(6, fitted.Curve.At(20), 1.0);
        Assert.Equal(6, RecoveryCurveFit.Of([3, 3, 3, 3, 3], [5, 6, 7, 6, 6], 1)!.Curve.At(3), 1e-6);
    }

    [Fact]
    public void Too_few_days_give_no_curve_and_what_makes_no_sense_is_refused()
    {
        Assert.Null(RecoveryCurveFit.Of([1, 2, 3, 4], [9, 8, 7, 6], 1));
        Assert.StartsWith("There are 2 days and 1 drops", Assert.Throws<ArgumentException>(() => RecoveryCurveFit.Of([1, 2], [1], 1)).Message, StringComparison.Ordinal);
        Assert.StartsWith("sd is 0", Assert.Throws<ArgumentException>(() => RecoveryCurveFit.Of([1, 2], [1, 2], 0)).Message, StringComparison.Ordinal);
    }
}
