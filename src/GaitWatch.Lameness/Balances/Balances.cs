using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>
/// The four legs' shares as log-ratio balances: an orthogonal description of a composition with three degrees of freedom, in
/// which distances mean what they should and from which shares map back without ever leaving 0 to 1.
/// </summary>
/// <remarks>Source: Egozcue J.J. et al. 2003, Math Geol 35:279-300 (isometric log-ratio). No unit; sound cows lie within a few tenths of 0.</remarks>
/// <param name="ForeHind">ln( sqrt(lf rf) / sqrt(lh rh) ): weight carried in front against behind.</param>
/// <param name="Fore">sqrt(1/2) ln(lf / rf): left against right in front.</param>
/// <param name="Hind">sqrt(1/2) ln(lh / rh): left against right behind.</param>
public readonly record struct Balances(double ForeHind, double Fore, double Hind)
{
    private static readonly double _rootHalf = Math.Sqrt(0.5);

    /// <summary>The balances of four shares or four loads; only their ratios matter.</summary>
    /// <param name="shares">Share (or load, kg) of each leg; every one above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not a finite number above 0.</exception>
    public static Balances FromShares(PerLeg<double> shares)
    {
        foreach (var leg in Legs.All)
        {
            if (!(shares[leg] > 0 && double.IsFinite(shares[leg])))
            {
                throw new ArgumentOutOfRangeException(
                    nameof(shares), shares[leg], $"The share of {leg.WireName()} has to be a finite number above 0.");
            }
        }

        var (lf, rf, lh, rh) = (Math.Log(shares.Lf), Math.Log(shares.Rf), Math.Log(shares.Lh), Math.Log(shares.Rh));
        return new Balances(((lf + rf) - (lh + rh)) / 2, _rootHalf * (lf - rf), _rootHalf * (lh - rh));
    }

    /// <summary>The shares these balances stand for: each above 0, together 1.</summary>
    public PerLeg<double> ToShares()
    {
        var lf = Math.Exp((ForeHind / 2) + (_rootHalf * Fore));
        var rf = Math.Exp((ForeHind / 2) - (_rootHalf * Fore));
        var lh = Math.Exp((-ForeHind / 2) + (_rootHalf * Hind));
        var rh = Math.Exp((-ForeHind / 2) - (_rootHalf * Hind));
        var sum = (lf + rf) + (lh + rh);
        return new PerLeg<double>(lf / sum, rf / sum, lh / sum, rh / sum);
    }

    /// <summary>What a mirror would show: left and right exchanged.</summary>
    public Balances Mirrored() => new(ForeHind, -Fore, -Hind);

    /// <summary>Component-wise sum: the second composition's ratios applied to the first.</summary>
    public static Balances operator +(Balances a, Balances b) => new(a.ForeHind + b.ForeHind, a.Fore + b.Fore, a.Hind + b.Hind);

    /// <summary>Component-wise difference.</summary>
    public static Balances operator -(Balances a, Balances b) => new(a.ForeHind - b.ForeHind, a.Fore - b.Fore, a.Hind - b.Hind);

    internal Vector3 ToVector() => new(ForeHind, Fore, Hind);

    internal static Balances FromVector(Vector3 v) => new(v.X, v.Y, v.Z);
}
