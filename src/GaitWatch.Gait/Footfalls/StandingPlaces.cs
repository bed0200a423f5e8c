namespace GaitWatch.Gait;

/// <summary>A spot on the plate where the load rested for a while.</summary>
/// <param name="Start">First sample.</param>
/// <param name="End">Sample after the last.</param>
/// <param name="X">Mean centre of pressure, metres from the entry edge.</param>
internal readonly record struct StandingPlace(int Start, int End, double X);

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

    /// <summary>Half the span over which the speed is taken, seconds.</summary>
    private const double SpeedSpanSeconds = 0.03;

    /// <summary>Rests nearer than this are one spot: a tracking-up hind foot lands within 10 cm, its heel a few centimetres further back.</summary>
    public const double SameSpotMetres = 0.3;

    /// <summary>A cow's two feet on one plate stand no more than this apart; rests spread over a longer way are three footprints.</summary>
    private const double LongestStrideMetres = 1.95;

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
        var span = plate.Samples(SpeedSpanSeconds);
        var limit = RestMetresPerSecond * 2 * span * plate.Step;
        var shortest = plate.Samples(ShortestRestSeconds);
        var rests = new List<StandingPlace>();
        var from = -1;
        for (var i = stretch.Start; i <= stretch.End; i++)
        {
            var isRest = i < stretch.End && i - span >= stretch.Start && i + span < stretch.End
                && plate.ForceKg[i - span] > leastKg && plate.ForceKg[i + span] > leastKg
                && Math.Abs(X(plate, i + span) - X(plate, i - span)) < limit;
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
            rests.Insert(0, Place(plate, first, Math.Min(first + brief, last)));
        if (rests[^1].End < last - (2 * brief))
            rests.Add(Place(plate, Math.Max(last - brief, first), last));
    }

    /// <summary>
    /// Leaves the first rest, the last, and those at which the load turned back. A rest on the way is no footprint: there the load
    /// lingers between two feet that carry evenly for a while.
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
            rests[k - 1] = new StandingPlace(a.Start, b.End, x);
            rests.RemoveAt(k--);
        }

        for (var k = 1; k + 1 < rests.Count; k++)
        {
            var (before, at, after) = (rests[k - 1].X, rests[k].X, rests[k + 1].X);
            if ((at - before) * (after - at) > 0 && Math.Abs(after - before) < LongestStrideMetres)
                rests.RemoveAt(k--);
        }
    }

    private static double X(PlateSignal plate, int i) => plate.MomentKgMetres[i] / plate.ForceKg[i];

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
