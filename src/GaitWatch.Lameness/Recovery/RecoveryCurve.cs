namespace GaitWatch.Lameness;

/// <summary>d(t) = dInf + (d0 - dInf) exp(-t / tau), t in days since treatment, d in per cent.</summary>
/// <param name="StartPercent">d0: the drop at treatment.</param>
/// <param name="EndPercent">dInf: what is left in the end.</param>
/// <param name="TauDays">tau: days in which the way still to go shrinks to 1/e.</param>
public readonly record struct RecoveryCurve(double StartPercent, double EndPercent, double TauDays)
{
    /// <summary>The drop at a time.</summary>
    /// <param name="days">Days since treatment.</param>
    /// <returns>Per cent.</returns>
    public double At(double days) => EndPercent + (StartPercent - EndPercent) * Math.Exp(-days / TauDays);
}
