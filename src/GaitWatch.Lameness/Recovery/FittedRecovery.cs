namespace GaitWatch.Lameness;

/// <summary>A fitted recovery curve and how sure it is.</summary>
/// <param name="Curve">The curve.</param>
/// <param name="HasShape">Whether start and end are shown to differ: otherwise tau means nothing.</param>
/// <param name="Covariance">Covariance of d0, dInf, tau; a parameter held at its bound has none.</param>
/// <param name="Quantile">Quantile of t that a 95 % interval takes.</param>
public sealed record FittedRecovery(RecoveryCurve Curve, bool HasShape, IReadOnlyList<IReadOnlyList<double>> Covariance, double Quantile)
{
    /// <summary>Half width of the 95 % interval of the curve at a time, per cent (delta method).</summary>
    /// <param name="days">Days since treatment.</param>
    public double HalfWidthAt(double days)
    {
        var gradient = RecoveryCurveFit.Gradient(Curve, days);
        double variance = 0;
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                variance += gradient[i] * Covariance[i][j] * gradient[j];
        }

        return Quantile * Math.Sqrt(Math.Max(variance, 0));
    }
}
