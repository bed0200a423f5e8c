namespace GaitWatch.Lameness;

/// <summary>Where each watched change of each designed size would take the balances of a cow with given shares.</summary>
internal static class Designs
{
    /// <summary>Fills in the designed change of every rule, pattern by pattern, design by design.</summary>
    public static void Fill(Balances baseline, Span<Vector3> designs)
    {
        var shares = baseline.ToShares();
        var i = 0;
        foreach (var pattern in WatchedPattern.All)
        {
            foreach (var fraction in pattern.Designs)
                designs[i++] = Unloading.Direction(shares, pattern.Pattern, pattern.Leg, fraction).ToVector();
        }
    }
}
