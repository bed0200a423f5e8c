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
        var stretches = Stretches(plate, onKg);
        for (var k = 0; k < stretches.Count; k++)
            EdgeFeet.Place(plate, stretches[k], k > 0 ? stretches[k - 1] : null, k + 1 < stretches.Count ? stretches[k + 1] : null);
        EdgeFeet.JoinRests(plate, stretches);
        foreach (var stretch in stretches)
            AddFeet(side, stretch, feet);
        return feet;
    }

    private static List<UndippedStretch> Stretches(PlateSignal plate, double onKg)
    {
        var stretches = new List<UndippedStretch>();
        foreach (var run in Runs(plate, onKg))
        {
            var cuts = LoadDips.In(plate, run);
            for (var c = 0; c <= cuts.Count; c++)
            {
                var isFirst = c == 0;
                var isLast = c == cuts.Count;
                var range = new SampleRange(isFirst ? run.Start : cuts[c - 1], isLast ? run.End : cuts[c]);
                stretches.Add(new UndippedStretch(
                    range, isFirst ? FootEvent.Alone : FootEvent.Swap, isLast ? FootEvent.Alone : FootEvent.Swap, StandingPlaces.In(plate, range, onKg)));
            }
        }

        return stretches;
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

    /// <summary>Adds the feet of a stretch: one, or one handing over to the next.</summary>
    private static void AddFeet(PlateSide side, UndippedStretch stretch, List<FootOnPlate> feet)
    {
        var places = stretch.Places;
        for (var k = 0; k < places.Count; k++)
        {
            var isFirst = k == 0;
            var isLast = k == places.Count - 1;
            // Beside a hidden foot the other is there from the beginning, or to the end.
            var contact = isFirst || places[k - 1].IsEdge ? stretch.Range.Start : places[k - 1].End;
            var lift = isLast || places[k + 1].IsEdge ? stretch.Range.End - 1 : places[k + 1].Start;
            feet.Add(new FootOnPlate
            {
                Side = side,
                Contact = contact,
                Lift = Math.Max(lift, contact + 1),
                ContactEvent = isFirst ? stretch.Begins : FootEvent.Transfer,
                LiftEvent = isLast ? stretch.Ends : FootEvent.Transfer,
                PlaceX = places[k].X,
                IsOnEdge = places[k].IsEdge,
                IsHidden = places[k].IsEdge,
                Line = new PressureLine(places[k].X, 0, 0, 0),
            });
        }
    }
}

/// <summary>A stretch of a plate's load between two dips.</summary>
/// <param name="Range">Its samples.</param>
/// <param name="Begins">Whether its first foot came down on an empty plate or where another stood.</param>
/// <param name="Ends">Whether its last foot left an empty plate or was followed on the spot.</param>
/// <param name="Places">Where the load rested, in order; at least one.</param>
internal sealed record UndippedStretch(SampleRange Range, FootEvent Begins, FootEvent Ends, List<StandingPlace> Places);
