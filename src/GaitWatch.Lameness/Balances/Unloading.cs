using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>
/// How the load moves when a leg, or a pair of legs, is spared. Half a ton does not vanish: what one leg gives up, the others carry.
/// </summary>
/// <remarks>
/// That most of a sore leg's load goes to the leg opposite and the rest to the other pair is common practice, no source; the
/// fraction <see cref="ToOpposite"/> is ours. The direction in balances depends on it only weakly: the sore leg's own fall dominates.
/// </remarks>
public static class Unloading
{
    /// <summary>Fraction of what a sore leg gives up that the opposite leg of the same pair takes; the other pair shares the rest.</summary>
    public const double ToOpposite = 0.75;

    /// <summary>The shares after one leg has given up a fraction of its load.</summary>
    /// <param name="shares">Shares before; together 1.</param>
    /// <param name="leg">The sore leg.</param>
    /// <param name="fraction">Fraction of that leg's own share given up, below 1; negative: it carries more.</param>
    public static PerLeg<double> OneLeg(PerLeg<double> shares, Leg leg, double fraction)
    {
        var given = shares[leg] * fraction;
        var opposite = leg.Opposite();
        return new PerLeg<double>(After(Leg.Lf), After(Leg.Rf), After(Leg.Lh), After(Leg.Rh));

        double After(Leg l) => shares[l] + (l == leg ? -given : l == opposite ? ToOpposite * given : (1 - ToOpposite) / 2 * given);
    }

    /// <summary>The shares after both legs of a pair have given up the same fraction of their loads; the other pair takes it in equal parts.</summary>
    /// <param name="shares">Shares before; together 1.</param>
    /// <param name="fore">Whether the sore pair is the one in front.</param>
    /// <param name="fraction">Fraction of each sore leg's own share given up, below 1; negative: they carry more.</param>
    public static PerLeg<double> Pair(PerLeg<double> shares, bool fore, double fraction)
    {
        var given = fraction * (fore ? shares.Lf + shares.Rf : shares.Lh + shares.Rh);
        return new PerLeg<double>(After(Leg.Lf), After(Leg.Rf), After(Leg.Lh), After(Leg.Rh));

        double After(Leg l) => l.IsFore() == fore ? shares[l] * (1 - fraction) : shares[l] + (given / 2);
    }

    /// <summary>The way the balances move when a pattern of the given size sets in on a cow with these shares.</summary>
    /// <param name="shares">Her shares while sound; together 1.</param>
    /// <param name="pattern">What is spared.</param>
    /// <param name="leg">The leg, where the pattern is of one leg.</param>
    /// <param name="fraction">Fraction of the sore leg's (each of the sore legs') load given up.</param>
    public static Balances Direction(PerLeg<double> shares, AlertPattern pattern, Leg leg, double fraction)
    {
        var after = pattern == AlertPattern.OneLeg
            ? OneLeg(shares, leg, fraction)
            : Pair(shares, pattern == AlertPattern.BothFore, fraction);
        return Balances.FromShares(after) - Balances.FromShares(shares);
    }
}
