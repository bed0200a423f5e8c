namespace GaitWatch.Gait;

/// <summary>Finds the feet that stood on a plate, in order of landing, with rough times.</summary>
internal static class FootFinder
{
    /// <summary>Half of a cow's claw length and a margin, metres: a foot whose middle is nearer to an edge may press beyond it.</summary>
    public const double HalfFootMetres = 0.065;

    /// <summary>The feet of a plate.</summary>
    public static List<FootOnPlate> Find(PlateSignal plate, PlateSide side, double onKg)
    {
        var feet = new List<FootOnPlate>();
        foreach (var run in StandingPlaces.Find(plate, onKg))
            AddFeet(plate, side, run, feet);
        return feet;
    }

    private static void AddFeet(PlateSignal plate, PlateSide side, LoadedRun run, List<FootOnPlate> feet)
    {
        var places = run.Places;
        for (var k = 0; k < places.Count; k++)
        {
            var isFirst = k == 0;
            var isLast = k == places.Count - 1;
            var from = isFirst ? run.Range.Start : (places[k - 1].End + places[k].Start) / 2;
            var to = isLast ? run.Range.End : (places[k].End + places[k + 1].Start) / 2;
            var cuts = new List<int>();
            AddCuts(plate, from, to, cuts);
            for (var c = 0; c <= cuts.Count; c++)
            {
                var contact = c > 0 ? cuts[c - 1] : isFirst ? run.Range.Start : places[k - 1].End;
                var lift = c < cuts.Count ? cuts[c] : isLast ? run.Range.End - 1 : places[k + 1].Start;
                var foot = new FootOnPlate
                {
                    Side = side,
                    Contact = contact,
                    Lift = Math.Max(lift, contact + 1),
                    ContactEvent = c > 0 ? FootEvent.Swap : isFirst ? FootEvent.Alone : FootEvent.Transfer,
                    LiftEvent = c < cuts.Count ? FootEvent.Swap : isLast ? FootEvent.Alone : FootEvent.Transfer,
                };
                foot.PlaceX = MeanX(plate, Math.Max(contact, places[k].Start), Math.Min(lift, places[k].End)) ?? places[k].X;
                foot.Line = new PressureLine(foot.PlaceX, 0, 0, 0);
                feet.Add(foot);
            }
        }
    }

    private static void AddCuts(PlateSignal plate, int from, int to, List<int> cuts)
    {
        var cut = StandingPlaces.SwapBetween(plate, from, to);
        if (cut <= from || cut >= to - 1 || cuts.Count >= 64)
            return;
        AddCuts(plate, from, cut, cuts);
        cuts.Add(cut);
        AddCuts(plate, cut, to, cuts);
    }

    private static double? MeanX(PlateSignal plate, int from, int to)
    {
        double force = 0, moment = 0;
        for (var i = from; i < to; i++)
        {
            force += plate.ForceKg[i];
            moment += plate.MomentKgMetres[i];
        }

        return force > 0 ? moment / force : null;
    }
}
