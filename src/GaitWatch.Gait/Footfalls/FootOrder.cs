namespace GaitWatch.Gait;

/// <summary>
/// Tells fore from hind by the order of landing: on each side of a walking cow they alternate. The load passes from a hind foot to
/// the fore foot a stride ahead, and a hind foot comes down where the fore foot stood that is leaving or has just left.
/// </summary>
internal static class FootOrder
{
    /// <summary>Longer than a swing, seconds: a foot that follows later on the same spot does not follow that foot.</summary>
    private const double LongestPauseSeconds = 1.2;

    /// <summary>Names the feet of a plate.</summary>
    /// <param name="feet">In order of landing.</param>
    /// <param name="step">Seconds a sample.</param>
    /// <returns>False when the feet contradict each other; they are named by the majority then.</returns>
    public static bool Name(List<FootOnPlate> feet, double step)
    {
        // Votes for "the even ones are fore feet".
        int evenFore = 0, oddFore = 0;
        for (var k = 0; k + 1 < feet.Count; k++)
        {
            var forward = feet[k + 1].PlaceX - feet[k].PlaceX;
            bool? firstIsFore = null;
            if (feet[k].LiftEvent == FootEvent.Transfer && forward > 0)
                firstIsFore = false;
            else if (Math.Abs(forward) < StandingPlaces.SameSpotMetres && (feet[k + 1].Contact - feet[k].Lift) * step < LongestPauseSeconds)
                firstIsFore = true;
            if (firstIsFore is not { } fore)
                continue;
            if (fore == (k % 2 == 0))
                evenFore++;
            else
                oddFore++;
        }

        if (evenFore + oddFore == 0)
            return feet.Count == 0;
        for (var k = 0; k < feet.Count; k++)
            feet[k].IsFore = (k % 2 == 0) == (evenFore >= oddFore);
        return evenFore == 0 || oddFore == 0;
    }
}
