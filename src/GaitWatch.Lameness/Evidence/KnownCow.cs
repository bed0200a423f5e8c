namespace GaitWatch.Lameness;

/// <summary>What is known of a cow that a passage may be held against: her balances and her weight.</summary>
/// <param name="Level">Her balances, the common movement taken off.</param>
/// <param name="Cov">Their uncertainty, her day's mood and her scatter from passage to passage included.</param>
/// <param name="Dof">Degrees of freedom of her tails.</param>
/// <param name="LogWeight">Natural logarithm of her weight, kg; NaN while unknown.</param>
/// <param name="IsFlagged">Whether an alert of hers is open.</param>
internal readonly record struct KnownCow(Vector3 Level, Matrix3 Cov, double Dof, double LogWeight, bool IsFlagged)
{
    /// <summary>How a passage compares with her.</summary>
    /// <param name="Apart">Passage less what was expected of her.</param>
    /// <param name="Cov">Its scale.</param>
    /// <param name="Inverse">Inverse of <paramref name="Cov"/>.</param>
    /// <param name="Log">Likelihood over the greatest there is, were she sound; logarithm.</param>
    internal readonly record struct Fit(Vector3 Apart, Matrix3 Cov, Matrix3 Inverse, double Log)
    {
        /// <summary>Logarithm of the density, but for a constant.</summary>
        public double Density => Log - (0.5 * Math.Log(Cov.Determinant));
    }

    /// <summary>How a passage compares with her, were she sound.</summary>
    public Fit Sound(HerdModel herd, Vector3 value, in Session common)
    {
        var cov = Cov + common.MovementCov + (Math.Max(common.Unrest - 1, 0) * (herd.Noise.Passage + herd.Noise.Day));
        var inverse = cov.Inverse();
        var apart = value - common.Movement - Level;
        return new Fit(apart, cov, inverse, TagExchange.LogT(inverse.Quadratic(apart), Dof));
    }

    /// <summary>Logarithm of the density, but for a constant, of the likelier of sound and lame.</summary>
    public double SoundOrLame(in Fit fit) =>
        fit.Density - fit.Log + TagExchange.OrLame(fit.Log, Level, fit.Apart, fit.Inverse, Dof, IsFlagged);

    /// <summary>How far a weight lies from hers, of logarithms; NaN when either is unknown.</summary>
    public double WeightApart(double logWeight) => logWeight - LogWeight;

    /// <summary>Logarithm of the density of a weight, but for a constant: t with 4 degrees of freedom; 0 when either is unknown.</summary>
    public double Weight(HerdModel herd, double logWeight)
    {
        var apart = WeightApart(logWeight);
        return double.IsNaN(apart) ? 0 : -2.5 * Math.Log(1 + (apart * apart / herd.WeightVariance / 4));
    }
}
