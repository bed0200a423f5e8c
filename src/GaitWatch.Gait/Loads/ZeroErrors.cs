namespace GaitWatch.Gait;

/// <summary>
/// What a zero that changed during a crossing makes of the impulses. The zero is laid as a straight line between the two empties, but under the
/// cow it may have stepped (a stone) or wandered, nobody sees when.
/// </summary>
/// <remarks>
/// A step d that comes at any moment alike, less the straight line to d, is at u (0 to 1 of the load's duration) off by d (1 - u) after it and by -d u
/// before it: mean 0, covariance of two moments d^2 (min(u, v) - u v), that of a Brownian bridge. So has a wandering that ends at d by
/// the same law, so it need not be known which of them it was.
/// </remarks>
internal static class ZeroErrors
{
    /// <summary>Feet closer together than this share an error half and half, metres: the lever between them says nothing.</summary>
    private const double LeastApartMetres = 0.25;

    /// <summary>Adds to the covariance of the impulses, kg2 s2.</summary>
    /// <param name="feet">The crossing.</param>
    /// <param name="index">Each foot's row.</param>
    /// <param name="covariance">Covariance of the impulses.</param>
    public static void Add(CrossingFeet feet, IReadOnlyDictionary<FootOnPlate, int> index, double[,] covariance)
    {
        foreach (var side in (ReadOnlySpan<PlateSide>)[PlateSide.Left, PlateSide.Right])
        {
            var list = side == PlateSide.Left ? feet.Left : feet.Right;
            foreach (var change in feet.Plates[side].ZeroChanges)
                Add(feet.Plates[side], list, change, index, covariance);
        }
    }

    private static void Add(PlateSignal plate, List<FootOnPlate> feet, ZeroChange change, IReadOnlyDictionary<FootOnPlate, int> index, double[,] covariance)
    {
        var seconds = new double[feet.Count];
        for (var k = 0; k < feet.Count; k++)
            seconds[k] = SecondsOf(k);
        for (var a = 0; a < feet.Count; a++)
        {
            for (var b = 0; b < feet.Count; b++)
            {
                var (u, v) = (Moment(feet[a]), Moment(feet[b]));
                covariance[index[feet[a]], index[feet[b]]] += change.Kg * change.Kg * seconds[a] * seconds[b] * (Math.Min(u, v) - (u * v));
            }
        }

        double Moment(FootOnPlate foot) => Math.Clamp(foot.Middle / plate.Count, 0, 1);

        // Seconds for which a foot takes what the cell reads too much: alone all of it, beside another by the levers, F1 = dF (x2 - x) / (x2 - x1).
        double SecondsOf(int k)
        {
            var foot = feet[k];
            var sum = foot.Lift - foot.Contact;
            if (k > 0)
                sum -= Overlap(feet[k - 1], foot) * (1 - Part(foot, feet[k - 1]));
            if (k + 1 < feet.Count)
                sum -= Overlap(foot, feet[k + 1]) * (1 - Part(foot, feet[k + 1]));
            return sum * plate.Step;
        }

        double Part(FootOnPlate of, FootOnPlate beside)
        {
            var apart = beside.Line.Middle - of.Line.Middle;
            return Math.Abs(apart) < LeastApartMetres ? 0.5 : (beside.Line.Middle - change.X) / apart;
        }
    }

    private static double Overlap(FootOnPlate first, FootOnPlate second) => Math.Max(0, Math.Min(first.Lift, second.Lift) - second.Contact);
}
