namespace GaitWatch.Gait;

/// <summary>A spot on the plate where the load rested for a while.</summary>
/// <param name="Start">First sample.</param>
/// <param name="End">Sample after the last.</param>
/// <param name="X">Mean centre of pressure, metres from the entry edge.</param>
/// <param name="IsBrief">True when it did not rest there, but the stretch began or ended there.</param>
/// <param name="IsEdge">
/// True for a foot half over an edge that was never alone on the plate for long: it is placed on the edge, where it must stand.
/// </param>
internal readonly record struct StandingPlace(int Start, int End, double X, bool IsBrief = false, bool IsEdge = false);

/// <summary>
/// Finds where the load rests and where it moves on. While one foot is alone its centre of pressure creeps heel to toe by a few
/// centimetres a stance; while the load passes from a hind foot to the fore foot a stride ahead it rushes over a metre in half a
/// second.
/// </summary>
internal static class StandingPlaces
{
    /// <summary>Between a creep of about 0.1 m/s and a rush of about 3 m/s.</summary>
    private const double RestMetresPerSecond = 0.45;

    private const double ShortestRestSeconds = 0.05;

    /// <summary>Period of the slowest ringing of a plate (12 Hz).</summary>
    private const double RingingSeconds = 0.08;

    /// <summary>Half the span over which the speed is taken, seconds.</summary>
    private const double SpeedSpanSeconds = 0.03;

    /// <summary>Rests nearer than this are one spot: a tracking-up hind foot lands within 10 cm, its heel a few centimetres further back.</summary>
    public const double SameSpotMetres = 0.3;

    /// <summary>A cow's two feet on one plate stand no more than this apart; rests spread over a longer way are three footprints.</summary>
    private const double LongestStrideMetres = 1.95;

    /// <summary>Nearer to a foot's place than this the load is on that foot, metres.</summary>
    private const double BesideMetres = 0.12;

    /// <summary>The places in a stretch without a dip, in order of time; at least one.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="stretch">The stretch.</param>
    /// <param name="onKg">Less than this is no load, kg.</param>
    public static List<StandingPlace> In(PlateSignal plate, SampleRange stretch, double onKg)
    {
        var peak = 0.0;
        for (var i = stretch.Start; i < stretch.End; i++)
            peak = Math.Max(peak, plate.ForceKg[i]);
        var rests = Rests(plate, stretch, Math.Min(0.1 * peak, 4 * onKg));
        AddEnds(plate, stretch, 1.3 * onKg, rests);
        KeepTurns(rests);
        return rests;
    }

    private static List<StandingPlace> Rests(PlateSignal plate, SampleRange stretch, double leastKg)
    {
        var x = SmoothPressureX(plate, stretch);
        var span = plate.Samples(SpeedSpanSeconds);
        var limit = RestMetresPerSecond * 2 * span * plate.Step;
        var shortest = plate.Samples(ShortestRestSeconds);
        var rests = new List<StandingPlace>();
        var from = -1;
        for (var i = stretch.Start; i <= stretch.End; i++)
        {
            var isRest = i - span >= stretch.Start && i + span < stretch.End
                && plate.ForceKg[i - span] > leastKg && plate.ForceKg[i + span] > leastKg
                && Math.Abs(x[i + span - stretch.Start] - x[i - span - stretch.Start]) < limit;
            if (isRest && from < 0)
                from = i;
            if (isRest || from < 0)
                continue;
            if (i - from >= shortest)
                rests.Add(Place(plate, from, i));
            from = -1;
        }

        return rests;
    }

    /// <summary>Centre of pressure over a ringing period around each sample, so that a plate's bounce does not hide a rest.</summary>
    private static double[] SmoothPressureX(PlateSignal plate, SampleRange stretch)
    {
        var half = plate.Samples(0.5 * RingingSeconds);
        var x = new double[stretch.Count];
        double force = 0, moment = 0;
        int from = stretch.Start, to = stretch.Start;
        for (var i = stretch.Start; i < stretch.End; i++)
        {
            for (; to < Math.Min(stretch.End, i + half + 1); to++)
            {
                force += plate.ForceKg[to];
                moment += plate.MomentKgMetres[to];
            }

            for (; from < i - half; from++)
            {
                force -= plate.ForceKg[from];
                moment -= plate.MomentKgMetres[from];
            }

            x[i - stretch.Start] = force > 0 ? moment / force : 0;
        }

        return x;
    }

    /// <summary>A stretch begins and ends with one foot alone, be it too briefly to rest.</summary>
    private static void AddEnds(PlateSignal plate, SampleRange stretch, double leastKg, List<StandingPlace> rests)
    {
        var brief = plate.Samples(ShortestRestSeconds);
        var first = stretch.Start;
        while (first < stretch.End - 1 && plate.ForceKg[first] < leastKg)
            first++;
        var last = stretch.End;
        while (last > first + 1 && plate.ForceKg[last - 1] < leastKg)
            last--;
        if (rests.Count == 0 || rests[0].Start > first + (2 * brief))
            rests.Insert(0, Place(plate, first, Math.Min(first + brief, last)) with { IsBrief = true });
        if (rests[^1].End < last - (2 * brief))
            rests.Add(Place(plate, Math.Max(last - brief, first), last) with { IsBrief = true });
    }

    /// <summary>
    /// Leaves the first rest, the last, and those at which the load turned back outside of the two. A rest on the way is no footprint:
    /// there the load lingers, or sways while she stands, between two feet.
    /// </summary>
    private static void KeepTurns(List<StandingPlace> rests)
    {
        for (var k = 1; k < rests.Count; k++)
        {
            if (Math.Abs(rests[k].X - rests[k - 1].X) >= SameSpotMetres)
                continue;
            var (a, b) = (rests[k - 1], rests[k]);
            var weight = (double)(b.End - b.Start) / (b.End - b.Start + a.End - a.Start);
            // A spot in the middle of the list takes both; at the ends it stays what the end says.
            var x = k - 1 == 0 ? a.X : k == rests.Count - 1 ? b.X : a.X + (weight * (b.X - a.X));
            rests[k - 1] = new StandingPlace(a.Start, b.End, x, a.IsBrief && b.IsBrief);
            rests.RemoveAt(k--);
        }

        var first = rests[0].X;
        var last = rests[^1].X;
        if (last > first && last - first < LongestStrideMetres)
            rests.RemoveAll(rest => rest.X > first + BesideMetres && rest.X < last - BesideMetres);
        for (var k = 1; k + 1 < rests.Count; k++)
        {
            var (before, at, after) = (rests[k - 1].X, rests[k].X, rests[k + 1].X);
            if ((at - before) * (after - at) > 0 && Math.Abs(after - before) < LongestStrideMetres)
                rests.RemoveAt(k--);
        }
    }

    private static StandingPlace Place(PlateSignal plate, int from, int to)
    {
        double force = 0, moment = 0;
        for (var i = from; i < to; i++)
        {
            force += plate.ForceKg[i];
            moment += plate.MomentKgMetres[i];
        }

        return new StandingPlace(from, to, moment / force);
    }
}
