namespace GaitWatch.Gait;

/// <summary>
/// Finds feet half over an edge that carry so little of their load on the plate, or so briefly alone, that the load never rests on them.
/// </summary>
/// <remarks>
/// A hind foot may press on the plate from before the entry edge while the fore foot stands a stride ahead, a fore foot from beyond
/// the exit edge while the hind foot stands behind. Counted with the whole foot they would falsify it, so they are given
/// a place of their own on the edge; their own figures are never used.
/// </remarks>
internal static class EdgeFeet
{
    /// <summary>Where the part of such a foot stands that is on the plate, metres from the edge: the half of a half foot.</summary>
    private const double InsetMetres = 0.03;

    /// <summary>No foot's centre of pressure travels further than this: a cow's claw is about 13 cm long (common practice, no source).</summary>
    private const double LongestTravelMetres = 0.095;

    /// <summary>Below this part of the stretch's highest load the centre of pressure is not trusted.</summary>
    private const double TrustedPart = 0.25;

    /// <summary>A foot's first and last part of a stance, in which it is hardly disturbed.</summary>
    private const double EndPart = 0.15;

    /// <summary>The least and the most way between the two feet of one side, metres.</summary>
    private const double ShortestStrideMetres = 0.7;

    private const double LongestStrideMetres = 1.95;

    /// <summary>A foot so near to an edge may be the one that follows or goes before a hidden one there.</summary>
    private const double NearEdgeMetres = 0.2;

    /// <summary>No foot of a walk stands more briefly, seconds.</summary>
    private const double ShortestStanceSeconds = 0.3;

    /// <summary>A place on an edge nearer to the entry than this is on the entry edge, metres: plates are longer than twice this.</summary>
    private const double EntryEdgeMetres = 0.5;

    /// <summary>Adds places on the edges to a stretch, or moves some there.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="stretch">The stretch.</param>
    /// <param name="before">The stretch before it on the plate.</param>
    /// <param name="after">The stretch after it on the plate.</param>
    /// <remarks>
    /// Where another foot stood before on the spot, this one is the hind foot, and only a fore foot ahead of it can be hidden; where
    /// another follows on the spot, it is the fore foot, and only a hind foot behind it can.
    /// </remarks>
    public static void Place(PlateSignal plate, UndippedStretch stretch, UndippedStretch? before, UndippedStretch? after)
    {
        var places = stretch.Places;
        var exit = plate.LengthMetres - InsetMetres;
        var mayBeHind = !places.Exists(place => IsFollowed(place.X));
        var mayBeFore = !places.Exists(place => IsFollowing(place.X));
        if (places.Count >= 2)
        {
            var (beforeLast, last) = (places[^2], places[^1]);
            var lastIsHidden = mayBeHind && last.X > beforeLast.X && IsStride(exit - beforeLast.X) && IsNoFoot(last, beforeLast);
            var (first, second) = (places[0], places[1]);
            var firstIsHidden = mayBeFore && first.X < second.X && IsStride(second.X - InsetMetres) && IsNoFoot(first, second);
            // With two places and no neighbour that tells, the longer rest is the foot.
            if (lastIsHidden && firstIsHidden && places.Count == 2)
                (firstIsHidden, lastIsHidden) = first.End - first.Start < last.End - last.Start ? (true, false) : (false, true);
            if (lastIsHidden)
                places[^1] = last with { X = exit, IsEdge = true };
            else if (firstIsHidden)
                places[0] = first with { X = InsetMetres, IsEdge = true };
            return;
        }

        if (Travel(plate, stretch.Range) is not { } travel)
            return;
        // The hidden foot draws the load towards itself; the other's own place is seen while it is not there: at the start of a hind foot, at
        // the end of a fore foot.
        var only = places[0];
        mayBeHind &= !IsFollowed(travel.End);
        mayBeFore &= !IsFollowing(travel.Start);
        if (mayBeHind && travel.Forward > LongestTravelMetres && IsStride(exit - only.X))
        {
            places[0] = only with { X = travel.Start };
            places.Add(new StandingPlace(stretch.Range.End - 1, stretch.Range.End, exit, IsEdge: true));
        }
        else if (mayBeFore && travel.Backward > LongestTravelMetres && IsStride(only.X - InsetMetres))
        {
            places[0] = only with { X = travel.End };
            places.Insert(0, new StandingPlace(stretch.Range.Start, stretch.Range.Start + 1, InsetMetres, IsEdge: true));
        }

        // A foot at the edge itself may follow or go before a hidden one there.
        bool IsFollowed(double x) =>
            after is not null && after.Places[0].X <= plate.LengthMetres - NearEdgeMetres && IsSameSpot(x, after.Places[0].X);

        bool IsFollowing(double x) => before is not null && before.Places[^1].X >= NearEdgeMetres && IsSameSpot(x, before.Places[^1].X);
    }

    /// <summary>
    /// Joins what a hidden foot leaves on the plate alone, before the other foot comes or when that has gone, to the stretch in which both are there: it is
    /// too brief for a stance.
    /// </summary>
    public static void JoinRests(PlateSignal plate, List<UndippedStretch> stretches)
    {
        var shortest = plate.Samples(ShortestStanceSeconds);
        for (var k = 0; k + 1 < stretches.Count; k++)
        {
            var (first, second) = (stretches[k], stretches[k + 1]);
            if (first.Ends != FootEvent.Swap)
                continue;
            UndippedStretch joined;
            if (second.Range.Count < shortest && first.Places is [.., { X: var x, IsEdge: true }] && x > EntryEdgeMetres)
                joined = first with { Range = new SampleRange(first.Range.Start, second.Range.End), Ends = second.Ends };
            else if (first.Range.Count < shortest && second.Places is [{ X: < EntryEdgeMetres, IsEdge: true }, ..])
                joined = second with { Range = new SampleRange(first.Range.Start, second.Range.End), Begins = first.Begins };
            else
                continue;
            stretches[k] = joined;
            stretches.RemoveAt(k + 1);
        }
    }

    private static bool IsSameSpot(double a, double b) => Math.Abs(a - b) < StandingPlaces.SameSpotMetres;

    /// <summary>Whether a place is none of a foot of its own: the load passed it by, or it lies too near to the other foot's.</summary>
    private static bool IsNoFoot(StandingPlace place, StandingPlace other) =>
        place.IsBrief || Math.Abs(place.X - other.X) < ShortestStrideMetres;

    private static bool IsStride(double metres) => metres is > ShortestStrideMetres and < LongestStrideMetres;

    /// <summary>Where the pressure starts and ends, how far it comes ahead of the one and stays behind the other.</summary>
    private static (double Start, double End, double Forward, double Backward)? Travel(PlateSignal plate, SampleRange stretch)
    {
        var leastKg = 0.0;
        for (var i = stretch.Start; i < stretch.End; i++)
            leastKg = Math.Max(leastKg, TrustedPart * plate.ForceKg[i]);
        var from = stretch.Start;
        while (from < stretch.End && plate.ForceKg[from] < leastKg)
            from++;
        var to = stretch.End;
        while (to > from && plate.ForceKg[to - 1] < leastKg)
            to--;
        var part = Math.Max(1, (int)(EndPart * (to - from)));
        if (to - from < 4 * part)
            return null;
        double start = 0, end = 0;
        for (var i = 0; i < part; i++)
        {
            start += plate.PressureX(from + i) / part;
            end += plate.PressureX(to - 1 - i) / part;
        }

        double highest = start, lowest = end;
        for (var i = from; i < to; i++)
        {
            highest = Math.Max(highest, plate.PressureX(i));
            lowest = Math.Min(lowest, plate.PressureX(i));
        }

        return (start, end, highest - start, end - lowest);
    }
}
