namespace GaitWatch.Lameness;

/// <summary>
/// The herd's noise, from which a cow's own is shrunk: how passages of one day scatter, how days scatter, how much of a day stays to the
/// next, and how fast a cow's mean drifts. Read off the scatter of differences between a cow's passages at growing distances.
/// </summary>
/// <remarks>
/// Half the squared difference of two passages (a variogram; Cressie N. 1993, Statistics for Spatial Data, ch. 2) is, on one day, the passage noise W; n days apart
/// W + B (1 - kept^n) + drift n / 2.
/// </remarks>
internal sealed class HerdNoise
{
    /// <summary>Distances in days at which differences are read; 0 is within a day.</summary>
    public static readonly int[] Lags = [0, 1, 2, 4, 8, 16, 32];

    private const double Memory = 20000;
    private const double PriorCount = 200;

    /// <summary>The least drift believed, a day, over a passage's noise: no cow is the same for ever.</summary>
    private const double LeastDrift = 4e-4;

    /// <summary>Before anything is seen: 3.5 % of a balance from passage to passage, 1.5 % from day to day, 0.15 % a day of drift.</summary>
    private static readonly Matrix3 _firstPassage = Matrix3.Diagonal(0.035 * 0.035, 0.035 * 0.035, 0.035 * 0.035);
    private static readonly Matrix3 _firstDay = Matrix3.Diagonal(0.015 * 0.015, 0.015 * 0.015, 0.015 * 0.015);
    private static readonly Matrix3 _firstDrift = Matrix3.Diagonal(0.0015 * 0.0015, 0.0015 * 0.0015, 0.0015 * 0.0015);

    private readonly Scatter[] _scatter = new Scatter[Lags.Length];

    public HerdNoise()
    {
        for (var i = 0; i < Lags.Length; i++)
            _scatter[i] = new Scatter(i == 0 ? _firstPassage : _firstPassage + _firstDay + (Lags[i] / 2.0 * _firstDrift), PriorCount);
    }

    /// <summary>Scale of one passage around its day.</summary>
    public Matrix3 Passage { get; private set; } = _firstPassage;

    /// <summary>Scale of a day around the cow's mean.</summary>
    public Matrix3 Day { get; private set; } = _firstDay;

    /// <summary>Variance the mean gains in a day.</summary>
    public Matrix3 Drift { get; private set; } = _firstDrift;

    /// <summary>Fraction of a day that stays to the next.</summary>
    public double Kept { get; private set; }

    /// <summary>Overall factor on <see cref="Passage"/> and <see cref="Day"/>, by the surprises themselves.</summary>
    public double Factor { get; private set; } = 1;

    /// <summary>Takes in the difference of two passages of a sound cow, over her own noise level.</summary>
    public void Add(int lagIndex, Vector3 difference, double tails) => _scatter[lagIndex].Add(Math.Sqrt(0.5) * difference, tails, Memory);

    /// <summary>Reads the parts off anew, once a day.</summary>
    /// <param name="scale">How the surprises since have turned out against what was expected: 1 as expected.</param>
    /// <returns>By how much the covariances changed in all.</returns>
    public double Refresh(double scale)
    {
        var within = _scatter[0].Value;
        var slope = (0.4 / 7 * (_scatter[5].Value - _scatter[2].Value)) + (0.6 / 14 * (_scatter[6].Value - _scatter[3].Value));
        // A slope is a small difference of large numbers: what the three balances drift relative to their noise is half each one's own, half the mean of them.
        var pooled = ((slope.Xx / within.Xx) + (slope.Yy / within.Yy) + (slope.Zz / within.Zz)) / 3;
        var drift = Matrix3.Diagonal(
            DriftOf(slope.Xx, within.Xx, pooled), DriftOf(slope.Yy, within.Yy, pooled), DriftOf(slope.Zz, within.Zz, pooled));
        var far = (0.5 * (_scatter[2].Value + _scatter[3].Value)) - (1.5 * drift);
        var day = far - within;
        var (x, y, z) = (Positive(day.Xx, within.Xx), Positive(day.Yy, within.Yy), Positive(day.Zz, within.Zz));
        var size = (x / within.Xx) + (y / within.Yy) + (z / within.Zz);
        var next = _scatter[1].Value - within - (0.5 * drift);
        var kept = 1 - (((next.Xx / within.Xx) + (next.Yy / within.Yy) + (next.Zz / within.Zz)) / size);
        Kept = Math.Clamp(kept, 0, 0.7);
        Drift = drift;
        Factor *= Math.Clamp(scale, 0.9, 1.1);
        Passage = Factor * within;
        Day = Correlated(x, y, z, within);
        return Math.Clamp(scale, 0.9, 1.1);
    }

    private static double DriftOf(double slope, double passage, double pooled) =>
        Math.Max((0.5 * slope) + (0.5 * pooled * passage), LeastDrift * passage);

    private static double Positive(double variance, double passage) => Math.Max(variance, 0.02 * passage);

    /// <summary>Day variances with the passages' correlations: a difference of two noisy matrices need not be a covariance, this is one.</summary>
    private static Matrix3 Correlated(double x, double y, double z, Matrix3 like)
    {
        var xy = like.Xy * Math.Sqrt(x * y / (like.Xx * like.Yy));
        var xz = like.Xz * Math.Sqrt(x * z / (like.Xx * like.Zz));
        var yz = like.Yz * Math.Sqrt(y * z / (like.Yy * like.Zz));
        return new Matrix3(x, xy, xz, xy, y, yz, xz, yz, z);
    }

    public void Save(BinaryWriter writer)
    {
        foreach (var s in _scatter)
            writer.Put(s);
        writer.Put(Passage);
        writer.Put(Day);
        writer.Put(Drift);
        writer.Write(Kept);
        writer.Write(Factor);
    }

    public static HerdNoise Load(BinaryReader reader)
    {
        var noise = new HerdNoise();
        for (var i = 0; i < Lags.Length; i++)
            noise._scatter[i] = reader.Take<Scatter>();
        noise.Passage = reader.Take<Matrix3>();
        noise.Day = reader.Take<Matrix3>();
        noise.Drift = reader.Take<Matrix3>();
        noise.Kept = reader.ReadDouble();
        noise.Factor = reader.ReadDouble();
        return noise;
    }
}
