namespace GaitWatch.Gait;

/// <summary>A spot on the plate where the load rested for a while.</summary>
/// <param name="Start">First sample.</param>
/// <param name="End">Sample after the last.</param>
/// <param name="X">Mean centre of pressure, metres from the entry edge.</param>
internal readonly record struct StandingPlace(int Start, int End, double X);

/// <summary>A stretch in which a plate was loaded without a break, and the places where the load rested meanwhile.</summary>
internal sealed record LoadedRun(SampleRange Range, List<StandingPlace> Places);

/// <summary>
/// Finds where the load rests and where it moves on. While one foot is alone its centre of pressure creeps heel to toe by a few
/// centimetres a stance; while the load passes from a hind foot to the fore foot a stride ahead it rushes over a metre in half a
/// second. Speed tells the two apart.
/// </summary>
internal static class StandingPlaces
{
    /// <summary>Between a creep of about 0.1 m/s and a rush of about 3 m/s.</summary>
    private const double RestMetresPerSecond = 0.45;

    private const double ShortestRestSeconds = 0.05;

    /// <summary>Half the span over which the speed is taken, seconds.</summary>
    private const double SpeedSpanSeconds = 0.03;

    /// <summary>Rests nearer than this are one spot: a tracking-up hind foot lands within 10 cm, its heel a few centimetres further back.</summary>
    public const double SameSpotMetres = 0.45;

    /// <summary>A cow's two feet on one plate stand no more than this apart; three spots over a longer way are three footprints.</summary>
    private const double LongestStrideMetres = 1.95;

    /// <summary>The loaded runs of a plate in order of time.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="onKg">Less than this is no load, kg.</param>
    public static List<LoadedRun> Find(PlateSignal plate, double onKg)
    {
        var runs = new List<LoadedRun>();
        var force = plate.ForceKg;
        var i = 0;
        while (i < plate.Count)
        {
            if (force[i] <= onKg)
            {
                i++;
                continue;
            }

            var start = i;
            var peak = 0.0;
            while (i < plate.Count && force[i] > onKg)
                peak = Math.Max(peak, force[i++]);
            if (i - start >= plate.Samples(0.06) && peak > 3 * onKg)
                runs.Add(new LoadedRun(new SampleRange(start, i), Rests(plate, start, i, Math.Max(1.5 * onKg, 0.1 * peak))));
        }

        return runs;
    }

    private static List<StandingPlace> Rests(PlateSignal plate, int start, int end, double leastKg)
    {
        var span = plate.Samples(SpeedSpanSeconds);
        var limit = RestMetresPerSecond * 2 * span * plate.Step;
        var shortest = plate.Samples(ShortestRestSeconds);
        var rests = new List<StandingPlace>();
        var from = -1;
        for (var i = start; i <= end; i++)
        {
            var rests1 = i < end && i - span >= start && i + span < end && plate.ForceKg[i - span] > leastKg && plate.ForceKg[i + span] > leastKg
                && plate.ForceKg[i] > leastKg && Math.Abs(X(plate, i + span) - X(plate, i - span)) < limit;
            if (rests1 && from < 0)
                from = i;
            if (rests1 || from < 0)
                continue;
            if (i - from >= shortest)
                AddRest(rests, Place(plate, from, i));
            from = -1;
        }

        DropStalls(plate, rests);
        if (rests.Count == 0)
            rests.Add(Place(plate, start, end));
        return rests;
    }

    private static void AddRest(List<StandingPlace> rests, StandingPlace next)
    {
        if (rests.Count > 0 && Math.Abs(rests[^1].X - next.X) < SameSpotMetres)
        {
            var last = rests[^1];
            var weight = (double)(next.End - next.Start) / (next.End - next.Start + last.End - last.Start);
            rests[^1] = new StandingPlace(last.Start, next.End, last.X + (weight * (next.X - last.X)));
        }
        else
        {
            rests.Add(next);
        }
    }

    /// <summary>
    /// A rest on the way between two others is no footprint: while she stands on two feet of one side the load rests between them.
    /// </summary>
    private static void DropStalls(PlateSignal plate, List<StandingPlace> rests)
    {
        for (var k = 1; k + 1 < rests.Count; k++)
        {
            var (before, at, after) = (rests[k - 1].X, rests[k].X, rests[k + 1].X);
            var between = (at - before) * (after - at) > 0;
            if (!between || Math.Abs(after - before) > LongestStrideMetres || SwapBetween(plate, rests[k].Start, rests[k].End) >= 0)
                continue;
            rests.RemoveAt(k--);
            if (k >= 0 && k + 1 < rests.Count && Math.Abs(rests[k].X - rests[k + 1].X) < SameSpotMetres)
                k--;
            k = Math.Max(k, 0);
        }
    }

    /// <summary>Part of the lower neighbouring peak that the load falls to while one foot follows another on the same spot.</summary>
    private const double SwapDip = 0.55;

    /// <summary>
    /// Where between two samples the load dips as when one foot leaves and another comes down: well below the dip between the two
    /// peaks of a hind foot (Scott 1988). -1 when nowhere.
    /// </summary>
    public static int SwapBetween(PlateSignal plate, int from, int to)
    {
        var force = plate.ForceKg;
        if (to - from < 3)
            return -1;
        var highestAfter = new double[to - from];
        var highest = 0.0;
        for (var i = to - 1; i >= from; i--)
            highestAfter[i - from] = highest = Math.Max(highest, force[i]);
        var best = -1;
        var lowest = SwapDip;
        highest = 0;
        for (var i = from; i < to; i++)
        {
            highest = Math.Max(highest, force[i]);
            var peak = Math.Min(highest, highestAfter[i - from]);
            if (peak > 0 && force[i] / peak < lowest)
            {
                lowest = force[i] / peak;
                best = i;
            }
        }

        return best;
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
