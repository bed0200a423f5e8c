namespace GaitWatch.Gait;

/// <summary>Finds the feet that stood on a plate, in order of landing, with rough times.</summary>
internal static class FootFinder
{
    private const double ShortestStanceSeconds = 0.06;

    /// <summary>The feet of a plate.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="side">Which one it is.</param>
    /// <param name="onKg">Less than this is no load, kg.</param>
    public static List<FootOnPlate> Find(PlateSignal plate, PlateSide side, double onKg)
    {
        var feet = new List<FootOnPlate>();
        foreach (var run in Runs(plate, onKg))
        {
            var cuts = LoadDips.In(plate, run);
            for (var c = 0; c <= cuts.Count; c++)
            {
                var from = c == 0 ? run.Start : cuts[c - 1];
                var to = c == cuts.Count ? run.End : cuts[c];
                AddFeet(plate, side, new SampleRange(from, to), c == 0 ? FootEvent.Alone : FootEvent.Swap, c == cuts.Count ? FootEvent.Alone : FootEvent.Swap, onKg, feet);
            }
        }

        return feet;
    }

    private static List<SampleRange> Runs(PlateSignal plate, double onKg)
    {
        var runs = new List<SampleRange>();
        var force = plate.ForceKg;
        for (var i = 0; i < plate.Count; i++)
        {
            if (force[i] <= onKg)
                continue;
            var start = i;
            var peak = 0.0;
            while (i < plate.Count && force[i] > onKg)
                peak = Math.Max(peak, force[i++]);
            if (i - start >= plate.Samples(ShortestStanceSeconds) && peak > 2.5 * onKg)
                runs.Add(new SampleRange(start, i));
        }

        return runs;
    }

    /// <summary>Adds the feet between two cuts: one, or one handing over to the next.</summary>
    private static void AddFeet(PlateSignal plate, PlateSide side, SampleRange stretch, FootEvent begins, FootEvent ends, double onKg, List<FootOnPlate> feet)
    {
        var places = StandingPlaces.In(plate, stretch, onKg);
        for (var k = 0; k < places.Count; k++)
        {
            var isFirst = k == 0;
            var isLast = k == places.Count - 1;
            var contact = isFirst ? stretch.Start : places[k - 1].End;
            var lift = isLast ? stretch.End - 1 : places[k + 1].Start;
            feet.Add(new FootOnPlate
            {
                Side = side,
                Contact = contact,
                Lift = Math.Max(lift, contact + 1),
                ContactEvent = isFirst ? begins : FootEvent.Transfer,
                LiftEvent = isLast ? ends : FootEvent.Transfer,
                PlaceX = places[k].X,
                Line = new PressureLine(places[k].X, 0, 0, 0),
            });
        }
    }
}
