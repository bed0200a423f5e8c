namespace GaitWatch.Lameness;

/// <summary>
/// What is known of a cow's own normal: her mean balances, which drift slowly, and the day she is having, which goes with the day.
/// A Kalman filter of both with their joint uncertainty, so that what she is predicted to show next carries the uncertainty of a
/// young baseline and the likeness of passages of one day.
/// </summary>
/// <remarks>
/// Passage = Mean + Day + noise. Kalman R.E. 1960, J Basic Eng 82:35-45; blocks of 3 written out. Day starts anew each farm day,
/// keeping a fraction of the day before.
/// </remarks>
internal struct BaselineFilter
{
    public Vector3 Mean;
    public Vector3 Day;
    public Matrix3 MeanCov;
    public Matrix3 MeanDayCov;
    public Matrix3 DayCov;

    /// <summary>A cow of whom only the herd is known.</summary>
    public static BaselineFilter Unknown(Vector3 herdMean, Matrix3 herdSpread, Matrix3 dayCov) =>
        new() { Mean = herdMean, MeanCov = herdSpread, DayCov = dayCov };

    /// <summary>What the next passage is expected to show.</summary>
    public readonly Vector3 Expected => Mean + Day;

    /// <summary>Uncertainty of <see cref="Expected"/>, the passage's own noise not included.</summary>
    public readonly Matrix3 ExpectedCov => MeanCov + MeanDayCov + MeanDayCov.Transposed() + DayCov;

    /// <summary>Lets the mean drift: adds to its uncertainty.</summary>
    public void Drift(Matrix3 cov) => MeanCov += cov;

    /// <summary>A new day: of the last day's mood a fraction <paramref name="kept"/> stays, the rest is drawn anew.</summary>
    public void NewDay(double kept, Matrix3 dayCov)
    {
        Day = kept * Day;
        MeanDayCov = kept * MeanDayCov;
        DayCov = (kept * kept * DayCov) + ((1 - (kept * kept)) * dayCov);
    }

    /// <summary>How much of a surprise goes into the mean and into the day, given the surprise's whole covariance.</summary>
    public readonly (Matrix3 Mean, Matrix3 Day) Gains(Matrix3 surpriseCov)
    {
        var inverse = surpriseCov.Inverse();
        return ((MeanCov + MeanDayCov) * inverse, (MeanDayCov.Transposed() + DayCov) * inverse);
    }

    /// <summary>Learns from a surprise (passage less <see cref="Expected"/>).</summary>
    public void Learn(Vector3 surprise, Matrix3 meanGain, Matrix3 dayGain)
    {
        var meanCross = MeanCov + MeanDayCov;
        var dayCross = MeanDayCov.Transposed() + DayCov;
        Mean += meanGain * surprise;
        Day += dayGain * surprise;
        MeanCov = (MeanCov - (meanGain * meanCross.Transposed())).Symmetrised();
        MeanDayCov -= meanGain * dayCross.Transposed();
        DayCov = (DayCov - (dayGain * dayCross.Transposed())).Symmetrised();
    }
}
