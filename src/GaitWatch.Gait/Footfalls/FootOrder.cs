namespace GaitWatch.Gait;

/// <summary>
/// Tells fore from hind by the order of landing. The load passes from a hind foot to the fore foot a stride ahead, and a
/// hind foot comes down where the fore foot stood that is leaving or has just left. Near an edge either may have missed the plate.
/// </summary>
/// <remarks>The cheapest naming of all feet of a plate is taken, where each link between two feet costs as little as it is usual.</remarks>
internal static class FootOrder
{
    /// <summary>What contradicts a walk costs this; naming that needs it is not to be trusted.</summary>
    private const double Contradiction = 3;

    /// <summary>Longer than a swing, seconds: a foot that follows later on the same spot does not follow that foot.</summary>
    private const double LongestPauseSeconds = 1.2;

    /// <summary>So near to an edge the other foot of its side may have missed the plate, metres.</summary>
    private const double EdgeMetres = 0.25;

    /// <summary>Names the feet of a plate.</summary>
    /// <param name="feet">In order of landing.</param>
    /// <param name="plate">The plate.</param>
    /// <returns>False when no naming makes a walk of them.</returns>
    public static bool Name(List<FootOnPlate> feet, PlateSignal plate)
    {
        if (feet.Count == 0)
            return true;
        var cost = new (double Hind, double Fore)[feet.Count];
        cost[0] = (feet[0].PlaceX < EdgeMetres ? 0.2 : 1, 0);
        for (var k = 1; k < feet.Count; k++)
        {
            var link = LinkOf(feet[k - 1], feet[k], plate.Step);
            cost[k] = (
                Math.Min(cost[k - 1].Hind + link.HindHind, cost[k - 1].Fore + link.ForeHind),
                Math.Min(cost[k - 1].Hind + link.HindFore, cost[k - 1].Fore + link.ForeFore));
        }

        var endsInFore = feet[^1].PlaceX > plate.LengthMetres - EdgeMetres ? 0.2 : 1;
        var fore = cost[^1].Fore + endsInFore < cost[^1].Hind;
        var total = Math.Min(cost[^1].Fore + endsInFore, cost[^1].Hind);
        for (var k = feet.Count - 1; k >= 0; k--)
        {
            feet[k].IsFore = fore;
            if (k == 0)
                break;
            var link = LinkOf(feet[k - 1], feet[k], plate.Step);
            fore = fore
                ? cost[k - 1].Fore + link.ForeFore < cost[k - 1].Hind + link.HindFore
                : cost[k - 1].Fore + link.ForeHind < cost[k - 1].Hind + link.HindHind;
        }

        return total < Contradiction;
    }

    private static Link LinkOf(FootOnPlate first, FootOnPlate second, double step)
    {
        var forward = second.PlaceX - first.PlaceX;
        if (first.LiftEvent == FootEvent.Transfer)
            return forward > 0 ? new Link(Contradiction, 0, Contradiction, Contradiction) : new Link(1, 1, 1, 1);
        if (Math.Abs(forward) < StandingPlaces.SameSpotMetres && (second.Contact - first.Lift) * step < LongestPauseSeconds)
            return new Link(Contradiction, Contradiction, 0, Contradiction);
        // Forward without standing together: the foot between missed the plate, or she runs.
        return forward > 0 ? new Link(0.2, 0.3, 2, 0.2) : new Link(1, 1, 1, 1);
    }

    /// <summary>Cost of a foot following another, by what the two are.</summary>
    private readonly record struct Link(double HindHind, double HindFore, double ForeHind, double ForeFore);
}
