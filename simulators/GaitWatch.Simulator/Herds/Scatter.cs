namespace GaitWatch.Simulator;

/// <summary>
/// A cow's scatter in the three directions that shares of four legs have: fore against hind, left against right in front, left
/// against right behind. Each is a log-ratio, so shares stay shares.
/// </summary>
/// <param name="ForeHind">ln of the pairs' geometric means, fore over hind.</param>
/// <param name="Fore">ln of left over right in front.</param>
/// <param name="Hind">ln of left over right behind.</param>
internal readonly record struct Scatter(double ForeHind, double Fore, double Hind)
{
    /// <summary>
    /// Standard deviations of a usual cow's single passage: about 1.5 % of the load of a leg for the pairs, 2 to 3 % for left against
    /// right (invented, of the order that walking over a scale shows).
    /// </summary>
    public static Scatter Usual { get; } = new(0.025, 0.045, 0.060);

    public static Scatter Draw(SeededRandom random, bool heavyTailed)
    {
        if (!heavyTailed)
            return new(random.Normal(), random.Normal(), random.Normal());
        return new(random.HeavyTailed(4), random.HeavyTailed(4), random.HeavyTailed(4));
    }

    public static Scatter operator +(Scatter a, Scatter b) => new(a.ForeHind + b.ForeHind, a.Fore + b.Fore, a.Hind + b.Hind);

    public static Scatter operator *(double factor, Scatter s) => new(factor * s.ForeHind, factor * s.Fore, factor * s.Hind);

    public static Scatter operator *(Scatter a, Scatter b) => new(a.ForeHind * b.ForeHind, a.Fore * b.Fore, a.Hind * b.Hind);

    /// <summary>The shares, scattered.</summary>
    public PerFoot<double> On(PerFoot<double> shares)
    {
        var lf = shares.Lf * Math.Exp(0.5 * ForeHind + 0.5 * Fore);
        var rf = shares.Rf * Math.Exp(0.5 * ForeHind - 0.5 * Fore);
        var lh = shares.Lh * Math.Exp(-0.5 * ForeHind + 0.5 * Hind);
        var rh = shares.Rh * Math.Exp(-0.5 * ForeHind - 0.5 * Hind);
        var sum = lf + rf + lh + rh;
        return new(lf / sum, rf / sum, lh / sum, rh / sum);
    }
}
