namespace GaitWatch.Gait;

/// <summary>How a plate reads at its exit cell against its entry cell, from many crossings.</summary>
/// <param name="Percent">How much more it reads at the exit cell for the same load, per cent; negative: less.</param>
/// <param name="ErrorPercent">One standard error of it, per cent.</param>
/// <param name="Crossings">How many crossings it rests on.</param>
/// <param name="LoadKg">Mean load of the feet it rests on, kg.</param>
public sealed record EndToEndGain(double Percent, double ErrorPercent, int Crossings, double LoadKg)
{
    /// <summary>Fewer crossings than this tell too little.</summary>
    public const int EnoughCrossings = 30;

    /// <summary>
    /// What many crossings do not average out, per cent: how feet travel and how a herd changes its pace is known only so well. On
    /// simulated platforms the estimate is off by 0.1 to 0.2, and by 0.4 where every cow slows down by a fifth (tests:
    /// <c>EndToEndGainTests</c>).
    /// </summary>
    public const double SystematicPercent = 0.25;

    /// <summary>Huber's constant: 95 % efficient for normal noise (Huber P.J. 1981, Robust Statistics).</summary>
    private const double Bend = 1.345;

    /// <summary>Median absolute deviation over standard deviation, normal noise.</summary>
    private const double MadPart = 0.6745;

    private const int Rounds = 30;

    /// <summary>The weighted mean with outliers bent down (Huber's M-estimator); null of too few crossings.</summary>
    /// <param name="crossings">What each crossing tells, in any order: the answer depends on their set, to the last bit.</param>
    public static EndToEndGain? Of(IEnumerable<PlateEnds> crossings)
    {
        var all = crossings.Order(Comparer<PlateEnds>.Create(
            (a, b) => (a.Percent, a.Weight, a.LoadKg).CompareTo((b.Percent, b.Weight, b.LoadKg)))).ToArray();
        if (all.Length < EnoughCrossings)
            return null;
        var centre = WeightedMedian(all);
        var scale = Scale(all, centre);
        if (!(scale > 0))
            return new EndToEndGain(centre, SystematicPercent, all.Length, MeanLoad(all));
        for (var round = 0; round < Rounds; round++)
        {
            double sum = 0, weights = 0;
            foreach (var one in all)
            {
                var weight = one.Weight * Math.Min(1, Bend / Math.Max(1e-12, Math.Abs(Standardised(one, centre, scale))));
                sum += weight * one.Percent;
                weights += weight;
            }

            var next = sum / weights;
            if (Math.Abs(next - centre) < 1e-10)
                break;
            centre = next;
        }

        // The estimator's own variance: mean of psi squared over the square of psi's mean slope.
        double psi = 0, slope = 0, total = 0;
        foreach (var one in all)
        {
            var z = Standardised(one, centre, scale);
            psi += one.Weight * Math.Pow(Math.Clamp(z, -Bend, Bend), 2);
            slope += Math.Abs(z) <= Bend ? one.Weight : 0;
            total += one.Weight;
        }

        var variance = scale * scale * psi / (slope * slope) * all.Length / (all.Length - 1);
        return new EndToEndGain(centre, Math.Sqrt(variance + (SystematicPercent * SystematicPercent)), all.Length, MeanLoad(all));
    }

    // A figure of weight w has the variance scale squared over w.
    private static double Standardised(PlateEnds one, double centre, double scale) => (one.Percent - centre) * Math.Sqrt(one.Weight) / scale;

    private static double Scale(PlateEnds[] all, double centre)
    {
        var deviations = all.Select(one => Math.Abs(one.Percent - centre) * Math.Sqrt(one.Weight)).Order().ToArray();
        return deviations[deviations.Length / 2] / MadPart;
    }

    private static double WeightedMedian(PlateEnds[] ordered)
    {
        var half = 0.5 * ordered.Sum(one => one.Weight);
        var sum = 0.0;
        foreach (var one in ordered)
        {
            sum += one.Weight;
            if (sum >= half)
                return one.Percent;
        }

        return ordered[^1].Percent;
    }

    private static double MeanLoad(PlateEnds[] all) => all.Average(one => one.LoadKg);
}
