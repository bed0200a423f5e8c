namespace GaitWatch.Lameness;

/// <summary>
/// What is known of a cow's own normal: her mean balances, which drift slowly; how far she has wandered from them, which comes back within weeks; and the day she
/// is having, which goes with the day. A Kalman filter of the three with their joint uncertainty, so that what she is predicted to show next carries the
/// uncertainty of a young baseline, what weeks may do by themselves, and the likeness of passages of one day.
/// </summary>
/// <remarks>
/// Passage = Mean + Wander + Day + noise. Kalman R.E. 1960, J Basic Eng 82:35-45; blocks of 3 written out. Wander is a first-order autoregression: its variance is
/// bounded, so that a change beyond it is never taken for it however slowly it comes. Day starts anew each farm day, keeping a fraction of the day before.
/// </remarks>
internal struct BaselineFilter
{
    public Vector3 Mean;
    public Vector3 Wander;
    public Vector3 Day;
    public Matrix3 MeanCov;
    public Matrix3 MeanWanderCov;
    public Matrix3 WanderCov;
    public Matrix3 MeanDayCov;
    public Matrix3 WanderDayCov;
    public Matrix3 DayCov;

    /// <summary>A cow of whom only the herd is known.</summary>
    public static BaselineFilter Unknown(Vector3 herdMean, Matrix3 herdSpread, Matrix3 wanderCov, Matrix3 dayCov) =>
        new() { Mean = herdMean, MeanCov = herdSpread, WanderCov = wanderCov, DayCov = dayCov };

    /// <summary>Where she stands apart from the day.</summary>
    public readonly Vector3 Level => Mean + Wander;

    /// <summary>Uncertainty of <see cref="Level"/>.</summary>
    public readonly Matrix3 LevelCov => MeanCov + MeanWanderCov + MeanWanderCov.Transposed() + WanderCov;

    /// <summary>What the next passage is expected to show.</summary>
    public readonly Vector3 Expected => Mean + Wander + Day;

    /// <summary>Uncertainty of <see cref="Expected"/>, the passage's own noise not included.</summary>
    public readonly Matrix3 ExpectedCov => MeanCross + WanderCross + DayCross;

    private readonly Matrix3 MeanCross => MeanCov + MeanWanderCov + MeanDayCov;

    private readonly Matrix3 WanderCross => MeanWanderCov.Transposed() + WanderCov + WanderDayCov;

    private readonly Matrix3 DayCross => MeanDayCov.Transposed() + WanderDayCov.Transposed() + DayCov;

    /// <summary>Lets the mean drift: adds to its uncertainty.</summary>
    public void Drift(Matrix3 cov) => MeanCov += cov;

    /// <summary>Time goes by: of what she has wandered a fraction <paramref name="kept"/> stays, the rest is drawn anew.</summary>
    public void Roam(double kept, Matrix3 wanderCov)
    {
        Wander = kept * Wander;
        MeanWanderCov = kept * MeanWanderCov;
        WanderDayCov = kept * WanderDayCov;
        WanderCov = (kept * kept * WanderCov) + ((1 - (kept * kept)) * wanderCov);
    }

    /// <summary>A new day: of the last day's mood a fraction <paramref name="kept"/> stays, the rest is drawn anew.</summary>
    public void NewDay(double kept, Matrix3 dayCov)
    {
        Day = kept * Day;
        MeanDayCov = kept * MeanDayCov;
        WanderDayCov = kept * WanderDayCov;
        DayCov = (kept * kept * DayCov) + ((1 - (kept * kept)) * dayCov);
    }

    /// <summary>She is shown to stand at her normal again: what was known of it and what is seen now are put together.</summary>
    /// <param name="normal">Her normal from before.</param>
    /// <param name="normalCov">Its uncertainty today.</param>
    /// <param name="wanderCov">How far she may have wandered from it.</param>
    public void Return(Vector3 normal, Matrix3 normalCov, Matrix3 wanderCov)
    {
        var seen = LevelCov;
        var gain = normalCov * (normalCov + wanderCov + seen).Inverse();
        Mean = normal + (gain * (Level - normal));
        MeanCov = (normalCov - (gain * normalCov)).Symmetrised();
        Wander = Vector3.Zero;
        WanderCov = wanderCov;
        (MeanWanderCov, MeanDayCov, WanderDayCov) = (Matrix3.Zero, Matrix3.Zero, Matrix3.Zero);
    }

    /// <summary>How much of a surprise goes into each part, given the surprise's whole covariance.</summary>
    public readonly Gains Gains(Matrix3 surpriseCov)
    {
        var inverse = surpriseCov.Inverse();
        return new Gains(MeanCross * inverse, WanderCross * inverse, DayCross * inverse);
    }

    /// <summary>Learns from a surprise (passage less <see cref="Expected"/>).</summary>
    public void Learn(Vector3 surprise, in Gains gains)
    {
        var (mean, wander, day) = (MeanCross.Transposed(), WanderCross.Transposed(), DayCross.Transposed());
        Mean += gains.Mean * surprise;
        Wander += gains.Wander * surprise;
        Day += gains.Day * surprise;
        MeanCov = (MeanCov - (gains.Mean * mean)).Symmetrised();
        MeanWanderCov -= gains.Mean * wander;
        MeanDayCov -= gains.Mean * day;
        WanderCov = (WanderCov - (gains.Wander * wander)).Symmetrised();
        WanderDayCov -= gains.Wander * day;
        DayCov = (DayCov - (gains.Day * day)).Symmetrised();
    }
}

/// <summary>How much of a surprise goes into each part of a baseline.</summary>
/// <param name="Mean">Into her mean.</param>
/// <param name="Wander">Into what she has wandered from it.</param>
/// <param name="Day">Into the day.</param>
internal readonly record struct Gains(Matrix3 Mean, Matrix3 Wander, Matrix3 Day);
