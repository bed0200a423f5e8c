namespace GaitWatch.Lameness;

/// <summary>
/// Whether two cows who walked one behind the other were read under each other's tags: both passages together are weighed, as each cow's own against as the
/// other's, by what is known of both cows' shares and weights.
/// </summary>
/// <remarks>A likelihood ratio with prior odds. That an ear tag read in a row of cows is at times the neighbour's is common practice, no source.</remarks>
internal static class TagExchange
{
    /// <summary>Odds that two neighbours' tags are exchanged, before the passages are looked at; ours, as all odds here.</summary>
    private static readonly double _logPrior = Math.Log(0.003);

    /// <summary>Odds that a change of the shares is lameness rather than noise, for one pattern and size.</summary>
    private static readonly double _logLame = Math.Log(0.02);

    /// <summary>Drops of a leg that are thought of; a pair's are half of each.</summary>
    private static readonly double[] _drops = [0.1, 0.2, 0.35, 0.5];

    /// <summary>A passage this likely her own, against the likeliest there is, is not looked at further, if its weight is hers as well.</summary>
    private const double Ordinary = -2;
    private const double OrdinaryWeight = 0.025;

    /// <summary>Whether the tags of two neighbours were exchanged.</summary>
    /// <param name="herd">The herd.</param>
    /// <param name="one">The cow asked about.</param>
    /// <param name="ones">What was read under her tag.</param>
    /// <param name="other">Her neighbour.</param>
    /// <param name="others">What was read under her neighbour's tag.</param>
    /// <param name="common">What moved everybody.</param>
    public static bool IsLikely(HerdModel herd, in KnownCow one, Crossed ones, in KnownCow other, Crossed others, in Session common)
    {
        var own = one.Sound(herd, ones.Value, common);
        if (own.Log > Ordinary && !(Math.Abs(one.WeightApart(ones.LogWeight)) > OrdinaryWeight))
            return false;
        var theirs = other.Sound(herd, others.Value, common);
        var exchanged = _logPrior + one.Sound(herd, others.Value, common).Density + one.Weight(herd, others.LogWeight)
            + other.Sound(herd, ones.Value, common).Density + other.Weight(herd, ones.LogWeight)
            - one.Weight(herd, ones.LogWeight) - other.Weight(herd, others.LogWeight);
        // Lameness can only speak for the tags as read: where both are likelier sound so, it need not be asked.
        return exchanged > own.Density + theirs.Density && exchanged > one.SoundOrLame(own) + other.SoundOrLame(theirs);
    }

    /// <summary>The likelihood, over the greatest there is, that what was seen is a change by lameness or none; logarithm.</summary>
    /// <param name="own">The same for none.</param>
    /// <param name="expected">Her balances as expected.</param>
    /// <param name="apart">Passage less expectation.</param>
    /// <param name="inverse">Inverse of its scale.</param>
    /// <param name="dof">Degrees of freedom.</param>
    /// <param name="frozen">Whether an alert of hers is open: then lameness is no surprise.</param>
    public static double OrLame(double own, Vector3 expected, Vector3 apart, in Matrix3 inverse, double dof, bool frozen)
    {
        var shares = Balances.FromVector(expected).ToShares();
        foreach (var pattern in WatchedPattern.All)
        {
            foreach (var drop in _drops)
            {
                var fraction = pattern.Pattern == AlertPattern.OneLeg ? drop : drop / 2;
                var left = apart - Unloading.Direction(shares, pattern.Pattern, pattern.Leg, fraction).ToVector();
                var lame = LogT(inverse.Quadratic(left), dof);
                own = Math.Max(own, frozen ? lame : lame + _logLame);
            }
        }

        return own;
    }

    /// <summary>Logarithm of a t density in three dimensions over its greatest, by the squared distance.</summary>
    public static double LogT(double distance, double dof) => -(dof + 3) / 2 * Math.Log(1 + (distance / dof));
}
