namespace GaitWatch.Gait;

/// <summary>Cuts a plate's load where one foot leaves and another comes down on the same spot.</summary>
/// <remarks>
/// On each side of a walking cow the hind foot comes down where the fore foot stood that is leaving or has just left, while the other
/// fore foot is still in the air: the plate's load falls to little or nothing. Between two such dips a hind foot stands first
/// and hands over to the fore foot a stride ahead.
/// </remarks>
internal static class LoadDips
{
    /// <summary>
    /// Part of the lower neighbouring peak that the load must fall to: well below the dip between the two peaks of a hind foot
    /// (Scott 1988), above what two feet carry that overlap on one spot for a tenth of their stance.
    /// </summary>
    private const double Depth = 0.55;

    /// <summary>A plate is not cut more often than this.</summary>
    private const int MostCuts = 64;

    /// <summary>The samples of lowest load at which a loaded run is cut, rising.</summary>
    public static List<int> In(PlateSignal plate, SampleRange run)
    {
        var cuts = new List<int>();
        Cut(plate.ForceKg, run.Start, run.End, cuts);
        return cuts;
    }

    private static void Cut(double[] force, int from, int to, List<int> cuts)
    {
        var at = Deepest(force, from, to);
        if (at <= from || cuts.Count >= MostCuts)
            return;
        Cut(force, from, at, cuts);
        cuts.Add(at);
        Cut(force, at, to, cuts);
    }

    private static int Deepest(double[] force, int from, int to)
    {
        if (to - from < 3)
            return -1;
        var highestAfter = new double[to - from];
        var highest = 0.0;
        for (var i = to - 1; i >= from; i--)
            highestAfter[i - from] = highest = Math.Max(highest, force[i]);
        var deepest = -1;
        var lowest = Depth;
        highest = 0;
        for (var i = from; i < to; i++)
        {
            highest = Math.Max(highest, force[i]);
            var peak = Math.Min(highest, highestAfter[i - from]);
            if (peak > 0 && force[i] / peak < lowest)
            {
                lowest = force[i] / peak;
                deepest = i;
            }
        }

        return deepest;
    }
}
