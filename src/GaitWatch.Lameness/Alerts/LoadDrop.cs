using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>How far one leg's share lies below its baseline, with a 95 % interval, percent.</summary>
/// <param name="Percent">100 (1 - share now / baseline share).</param>
/// <param name="Lower">Lower end.</param>
/// <param name="Upper">Upper end.</param>
/// <param name="BaselineShare">The leg's share while sound.</param>
/// <param name="ShareNow">Its share now.</param>
internal readonly record struct LoadDrop(double Percent, double Lower, double Upper, double BaselineShare, double ShareNow)
{
    /// <summary>The drop from one point to another, the uncertainty of both together given.</summary>
    public static LoadDrop Between(Vector3 baseline, Vector3 now, in Matrix3 cov, Leg leg)
    {
        var before = Balances.FromVector(baseline).ToShares();
        var after = Balances.FromVector(now).ToShares();
        var ratio = Math.Log(after[leg] / before[leg]);
        var deviation = Math.Sqrt(Math.Max(cov.Quadratic(LogShareGradient(after, leg)), 0));
        return new LoadDrop(
            100 * (1 - Math.Exp(ratio)),
            100 * (1 - Math.Exp(ratio + (1.96 * deviation))),
            100 * (1 - Math.Exp(ratio - (1.96 * deviation))),
            before[leg],
            after[leg]);
    }

    /// <summary>How the logarithm of a leg's share changes with the balances.</summary>
    public static Vector3 LogShareGradient(PerLeg<double> shares, Leg leg)
    {
        var mean = Vector3.Zero;
        foreach (var other in Legs.All)
            mean += shares[other] * LogLoadGradient(other);
        return LogLoadGradient(leg) - mean;
    }

    private static Vector3 LogLoadGradient(Leg leg)
    {
        var side = (leg.IsLeft() ? 1 : -1) * Math.Sqrt(0.5);
        return leg.IsFore() ? new Vector3(0.5, side, 0) : new Vector3(-0.5, 0, side);
    }
}
