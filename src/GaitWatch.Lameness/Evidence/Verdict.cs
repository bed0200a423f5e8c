using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>Where the evidence on one cow stands against the limits, and what it would raise.</summary>
internal static class Verdict
{
    /// <summary>
    /// Passages since the last zero before accumulated evidence raises. One stumble, or one tag of another cow, is not lameness; with
    /// heavy tails half of all false flags would be single passages. Only the sudden rule, far out, trusts one.
    /// </summary>
    private const int PassagesNeeded = 2;

    /// <summary>
    /// Evidence of one passage, over the limit, that needs no second: the tails of her own that would have to be supposed to explain it have been ruled out. Heavy tails bound
    /// what one passage can say, so only an even-tempered cow gets there.
    /// </summary>
    public const double Beyond = 2.5;

    /// <summary>Squared distance from what was expected below which one passage cannot be enough.</summary>
    public const double FarOut = 20;

    /// <summary>
    /// Added to the limit of the leg opposite one that is flagged, treated or lately healed, on the scale of log likelihood ratios: that it carries less again than it did while it carried for two is
    /// so much likelier than a second trouble. Ours; it delays the flag of a cow who truly goes lame on the other leg by about a quarter.
    /// </summary>
    private const double OppositeShift = 2;

    /// <summary>Weighs one cow's evidence.</summary>
    /// <param name="cow">Her CUSUMs.</param>
    /// <param name="limits">The herd's limits.</param>
    /// <param name="sudden">How suddenly each pattern set in with the newest passage, as a fraction of what raises at once.</param>
    /// <param name="vouched">Whether other cows vouch for the platform, so that a single passage may do.</param>
    /// <param name="open">Open troubles: what they are about is not raised again.</param>
    /// <param name="eased">The leg that may be easing: its opposite needs more.</param>
    /// <param name="evidence">Takes the evidence of each pattern as a fraction of its limit, in the order of <see cref="WatchedPattern.All"/>.</param>
    /// <returns>The CUSUM that would raise an alert; -1 when none would.</returns>
    public static int Weigh(
        CowEvidence cow, AlarmLimits limits, ReadOnlySpan<double> sudden, bool vouched, List<Trouble> open, Leg? eased, Span<double> evidence)
    {
        var (best, bestValue) = (-1, double.NegativeInfinity);
        for (var p = 0; p < WatchedPattern.All.Length; p++)
        {
            var pattern = WatchedPattern.All[p];
            var limit = limits.For(pattern) + (pattern.Pattern == AlertPattern.OneLeg && pattern.Leg.Opposite() == eased ? OppositeShift : 0);
            var isSudden = sudden[p];
            evidence[p] = Math.Max(isSudden, 0);
            var (barred, within) = IsOpen(pattern, open);
            for (var d = 0; d < WatchedPattern.DesignsEach; d++)
            {
                var i = (p * WatchedPattern.DesignsEach) + d;
                var rule = cow.Rules[i];
                var fraction = rule.Value / limit;
                evidence[p] = Math.Max(evidence[p], fraction);
                var raises = (fraction >= 1 && rule.Count >= PassagesNeeded) || (isSudden >= 1 && vouched);
                if (!raises || barred || (within && !IsFarWorse(pattern, d, rule)) || rule.Value - pattern.LimitShift <= bestValue)
                    continue;
                (best, bestValue) = (i, rule.Value - pattern.LimitShift);
            }
        }

        return best;
    }

    /// <summary>The highest evidence of any rule, log likelihood ratio, as for a pattern of average commonness.</summary>
    public static double Highest(CowEvidence cow)
    {
        var highest = 0.0;
        for (var i = 0; i < CowEvidence.RuleCount; i++)
        {
            if (cow.Rules[i].Count < PassagesNeeded)
                continue;
            highest = Math.Max(highest, cow.Rules[i].Value - WatchedPattern.All[i / WatchedPattern.DesignsEach].LimitShift);
        }

        return highest;
    }

    /// <summary>How probable each leg is the sore one, from how the evidence is divided; sums to 1.</summary>
    public static PerLeg<double> LegProbability(CowEvidence cow)
    {
        Span<double> odds = stackalloc double[4];
        var top = double.NegativeInfinity;
        Span<double> logs = stackalloc double[WatchedPattern.All.Length];
        for (var p = 0; p < logs.Length; p++)
        {
            logs[p] = -WatchedPattern.All[p].LimitShift + Best(cow, p);
            top = Math.Max(top, logs[p]);
        }

        for (var p = 0; p < logs.Length; p++)
        {
            var pattern = WatchedPattern.All[p];
            var weight = Math.Exp(logs[p] - top);
            if (pattern.Pattern == AlertPattern.OneLeg)
            {
                odds[(int)pattern.Leg] += weight;
                continue;
            }

            // A pair's weight goes to its legs as their own evidence stands.
            var (left, right) = (Math.Exp(logs[(int)pattern.Leg] - top), Math.Exp(logs[(int)pattern.Leg.Opposite()] - top));
            var toLeft = left + right > 0 ? left / (left + right) : 0.5;
            odds[(int)pattern.Leg] += weight * toLeft;
            odds[(int)pattern.Leg.Opposite()] += weight * (1 - toLeft);
        }

        var sum = odds[0] + odds[1] + odds[2] + odds[3];
        return new PerLeg<double>(odds[0] / sum, odds[1] / sum, odds[2] / sum, odds[3] / sum);
    }

    /// <summary>The highest evidence of a pattern's designs.</summary>
    public static double Best(CowEvidence cow, int pattern)
    {
        var best = 0.0;
        for (var d = 0; d < WatchedPattern.DesignsEach; d++)
            best = Math.Max(best, cow.Rules[(pattern * WatchedPattern.DesignsEach) + d].Value);
        return best;
    }

    /// <summary>Whether a pattern's own trouble is open, and whether that of a pair it belongs to is.</summary>
    private static (bool Itself, bool WithinPair) IsOpen(WatchedPattern pattern, List<Trouble> open)
    {
        var (itself, within) = (false, false);
        foreach (var trouble in open)
        {
            if (!pattern.Overlaps(trouble.Alert.Pattern, trouble.Alert.Leg))
                continue;
            if (pattern.Pattern == AlertPattern.OneLeg && trouble.Alert.Pattern != AlertPattern.OneLeg)
                within = true;
            else
                itself = true;
        }

        return (itself, within);
    }

    /// <summary>
    /// Whether one leg of a pair that is already flagged has lost so much more than the pair that it is a trouble of its own: two sore legs are seldom
    /// equally sore, and that alone is not.
    /// </summary>
    private static bool IsFarWorse(WatchedPattern pattern, int design, in Cusum rule) => rule.Grown * rule.Size * pattern.Designs[design] >= 0.1;
}
