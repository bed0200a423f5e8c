namespace GaitWatch.Simulator;

/// <summary>How body weight is shared over the legs, and what soreness, milk and calf do to it.</summary>
public static class LoadShares
{
    /// <summary>
    /// Of the load a sore leg gives up, this part goes to the opposite leg of its pair and the rest, in equal halves, to the other
    /// pair. Invented within what is known: most of it goes to the opposite leg.
    /// </summary>
    public const double ToOppositeLeg = 0.75;

    /// <summary>Four shares summing to 1 from the fore pair's part and each pair's left part.</summary>
    /// <param name="fore">Part of body weight on the fore pair, 0 to 1.</param>
    /// <param name="foreLeft">Part of the fore pair's load on the left leg, 0 to 1.</param>
    /// <param name="hindLeft">Part of the hind pair's load on the left leg, 0 to 1.</param>
    public static PerFoot<double> Of(double fore, double foreLeft, double hindLeft) =>
        new(fore * foreLeft, fore * (1 - foreLeft), (1 - fore) * hindLeft, (1 - fore) * (1 - hindLeft));

    /// <summary>The shares once one leg is sore. The sum stays as it was.</summary>
    /// <param name="shares">Shares before.</param>
    /// <param name="foot">The sore leg.</param>
    /// <param name="drop">Part of that leg's own load which she takes off it, 0 to below 1.</param>
    public static PerFoot<double> Sore(this PerFoot<double> shares, Foot foot, double drop)
    {
        if (!(drop is >= 0 and < 1))
            throw new ArgumentOutOfRangeException(nameof(drop), drop, "A load drop is a fraction from 0 to below 1.");
        var lost = shares[foot] * drop;
        return PerFoot.From(other =>
            other == foot ? shares[other] - lost
            : other == foot.Opposite() ? shares[other] + ToOppositeLeg * lost
            : shares[other] + 0.5 * (1 - ToOppositeLeg) * lost);
    }

    /// <summary>The shares of a cow who carries something more, or less, whose weight rests on the pairs in a way of its own.</summary>
    /// <param name="shares">Shares without it, summing to 1.</param>
    /// <param name="weightKg">Her weight without it, kg.</param>
    /// <param name="addedKg">What is added, kg; negative for what is taken away.</param>
    /// <param name="foreOfAdded">Part of it that rests on the fore pair, 0 to 1.</param>
    public static PerFoot<double> Carrying(this PerFoot<double> shares, double weightKg, double addedKg, double foreOfAdded)
    {
        var fore = shares.Lf + shares.Rf;
        var foreAfter = (fore * weightKg + foreOfAdded * addedKg) / (weightKg + addedKg);
        return Of(foreAfter, shares.Lf / fore, shares.Lh / (1 - fore));
    }
}
