namespace GaitWatch.Gait;

/// <summary>Her weight from two estimates.</summary>
/// <param name="Kg">The best estimate, kg.</param>
/// <param name="OfLegsKg">The sum of the legs' loads, less what speeding up and slowing down add to it, kg.</param>
/// <param name="OfPlatesKg">
/// The mean of all cells over whole half strides while all her feet that are down are on the plates, kg; null when there is no such time.
/// </param>
internal sealed record BodyWeight(double Kg, double OfLegsKg, double? OfPlatesKg)
{
    /// <summary>
    /// Error of the plates' mean over half a stride, as a part of the weight: her centre of mass is not back to the millimetre, and where her pace
    /// changes the half stride's end is not where it was laid.
    /// </summary>
    private const double WholeStrideError = 0.015;

    /// <summary>
    /// Error of a mean over one half stride beyond that, as a part of the weight: no cow carries left and right alike, and what two half
    /// strides differ does not show in one.
    /// </summary>
    private const double HalfStrideError = 0.025;

    /// <summary>Error that both share, as both come from the same cells: gain and zero, as a part of the weight (0.5 % mismatch of a cell).</summary>
    private const double SharedError = 0.003;

    /// <summary>
    /// The two estimates differ by no more than this part of the weight while left and right alternate; if they do, feet were taken for
    /// others.
    /// </summary>
    private const double LargestDifference = 0.15;

    /// <summary>Whether the two estimates contradict each other.</summary>
    public bool IsContradictory => OfPlatesKg is { } plates && Math.Abs(plates - OfLegsKg) > LargestDifference * plates;

    /// <summary>Weighs her.</summary>
    /// <param name="feet">Her feet.</param>
    /// <param name="loads">What each leg carried.</param>
    /// <param name="clock">Her stride times.</param>
    /// <param name="speed">Her mean speed, metres per second; null when unknown.</param>
    /// <returns>Null unless all four legs have a load.</returns>
    public static BodyWeight? Of(CrossingFeet feet, LegLoads loads, StrideClock? clock, double? speed)
    {
        if (loads.SumKg is not { } loadsSum || clock is null)
            return null;
        var sum = loadsSum * (1 - ForwardLean.OfSum(feet, clock, speed));
        if (OfPlates(feet, clock) is not { } plates)
            return new BodyWeight(sum, sum, null);
        var (mean, halves) = plates;
        var platesError = sum * ((WholeStrideError / Math.Sqrt(halves)) + (halves % 2 == 0 ? 0 : HalfStrideError / halves));
        var shared = Square(SharedError * sum);
        var (legsVariance, platesVariance) = (Square(loads.SumError) + shared, Square(platesError) + shared);
        // Least variance for two estimates of this covariance.
        var weightOfLegs = (platesVariance - shared) / (legsVariance + platesVariance - (2 * shared));
        return new BodyWeight((weightOfLegs * sum) + ((1 - weightOfLegs) * mean), sum, mean);
    }

    /// <summary>Mean of the whole platform over the most half strides that fit, and how many these are.</summary>
    private static (double Kg, int Halves)? OfPlates(CrossingFeet feet, StrideClock clock)
    {
        double from = 0;
        double to = feet.Plates.Left.Count;
        var swing = clock.SwingSeconds / feet.Step;
        foreach (var leg in Legs.All)
        {
            double? first = null, last = null;
            foreach (var foot in feet.InOrder)
            {
                if (foot.Leg != leg || !foot.IsWhole)
                    continue;
                first ??= foot.Contact;
                last = foot.Lift;
            }

            if (first is null || last is null)
                return null;
            // Before her first contact here the foot stood beside the plate until a swing earlier; after the last lift it lands a swing later.
            from = Math.Max(from, first.Value - swing);
            to = Math.Min(to, last.Value + swing);
        }

        var half = 0.5 * clock.StrideOf((0.5 * (from + to) * feet.Step) - (0.5 * clock.StanceSeconds)) / feet.Step;
        var halves = (int)((to - from) / half);
        if (halves < 1)
            return null;
        var start = (int)Math.Round(0.5 * (from + to - (halves * half)));
        var count = (int)Math.Round(halves * half);
        start = Math.Clamp(start, 0, Math.Max(0, feet.Plates.Left.Count - count));
        count = Math.Min(count, feet.Plates.Left.Count - start);
        var sum = 0.0;
        for (var i = start; i < start + count; i++)
            sum += feet.Plates.Left.ForceKg[i] + feet.Plates.Right.ForceKg[i];
        return count > 0 ? (sum / count, halves) : null;
    }

    private static double Square(double value) => value * value;
}
