namespace GaitWatch.Lameness;

/// <summary>
/// The herd's noise, from which a cow's own is shrunk: how passages of one day scatter, how days scatter, how much of a day stays to the
/// next, how far a cow wanders from her mean within weeks, and how fast the mean itself drifts. Read off the scatter of differences between a cow's passages at growing
/// distances.
/// </summary>
/// <remarks>
/// Half the squared difference of two passages (a variogram; Cressie N. 1993, Statistics for Spatial Data, ch. 2) is, on one day, the passage noise W; n days apart
/// W + B (1 - kept^n) + V (1 - exp(-n / <see cref="WanderDays"/>)) + drift n / 2.
/// </remarks>
internal sealed class HerdNoise
{
    /// <summary>Days in which wandering comes back by a factor e: weeks, as udder, pen and footing change. Ours; what is slower is drift.</summary>
    public const double WanderDays = 30;

    /// <summary>Distances in days at which differences are read; 0 is within a day.</summary>
    public static readonly int[] Lags = [0, 1, 2, 4, 8, 16, 32, 64];

    /// <summary>The first of <see cref="Lags"/> that a day's mood no longer reaches.</summary>
    private const int FarLag = 2;

    private const double Memory = 20000;
    private const double PriorCount = 200;

    /// <summary>The least drift a day and the least wandering believed, over a passage's noise: no cow is the same for ever.</summary>
    private const double LeastDrift = 2e-4;
    private const double LeastWander = 0.01;

    /// <summary>What is usual of both, and what that counts for: as much as differences that tell them to 0.1 and to 0.002; ours.</summary>
    private const double UsualWander = 0.08;
    private const double UsualDrift = 4e-4;
    private const double WanderWeight = 70;
    private const double DriftWeight = 170_000;

    /// <summary>Before anything is seen: 3.5 % of a balance from passage to passage, 1.5 % from day to day, 1 % of wandering, 0.07 % a day of drift.</summary>
    private static readonly Matrix3 _firstPassage = Matrix3.Diagonal(0.035 * 0.035, 0.035 * 0.035, 0.035 * 0.035);
    private static readonly Matrix3 _firstDay = Matrix3.Diagonal(0.015 * 0.015, 0.015 * 0.015, 0.015 * 0.015);
    private static readonly Matrix3 _firstWander = Matrix3.Diagonal(0.01 * 0.01, 0.01 * 0.01, 0.01 * 0.01);
    private static readonly Matrix3 _firstDrift = Matrix3.Diagonal(0.0007 * 0.0007, 0.0007 * 0.0007, 0.0007 * 0.0007);

    private readonly Scatter[] _scatter = new Scatter[Lags.Length];

    public HerdNoise()
    {
        for (var i = 0; i < Lags.Length; i++)
        {
            var prior = i == 0 ? _firstPassage : _firstPassage + _firstDay + (Returned(Lags[i]) * _firstWander) + (Lags[i] / 2.0 * _firstDrift);
            _scatter[i] = new Scatter(prior, PriorCount);
        }
    }

    /// <summary>Scale of one passage around its day.</summary>
    public Matrix3 Passage { get; private set; } = _firstPassage;

    /// <summary>Scale of a day around the cow's level.</summary>
    public Matrix3 Day { get; private set; } = _firstDay;

    /// <summary>Scale of her level's wandering around her mean.</summary>
    public Matrix3 Wander { get; private set; } = _firstWander;

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
        var (x, y, z) = (Slow(m => m.Xx), Slow(m => m.Yy), Slow(m => m.Zz));
        // What is slow is a small difference of large numbers: relative to the passages' noise it is half each balance's own, half the mean of the three.
        var (wander, drift) = ((x.Wander + y.Wander + z.Wander) / 3, (x.Drift + y.Drift + z.Drift) / 3);
        Wander = Matrix3.Diagonal(Pooled(x.Wander, wander) * within.Xx, Pooled(y.Wander, wander) * within.Yy, Pooled(z.Wander, wander) * within.Zz);
        Drift = Matrix3.Diagonal(Pooled(x.Drift, drift) * within.Xx, Pooled(y.Drift, drift) * within.Yy, Pooled(z.Drift, drift) * within.Zz);
        var far = (0.5 * (_scatter[FarLag].Value + _scatter[FarLag + 1].Value))
            - (0.5 * (Returned(Lags[FarLag]) + Returned(Lags[FarLag + 1])) * Wander) - (0.25 * (Lags[FarLag] + Lags[FarLag + 1]) * Drift);
        var day = far - within;
        var (dx, dy, dz) = (Positive(day.Xx, within.Xx), Positive(day.Yy, within.Yy), Positive(day.Zz, within.Zz));
        var size = (dx / within.Xx) + (dy / within.Yy) + (dz / within.Zz);
        var next = _scatter[1].Value - within - (Returned(1) * Wander) - (0.5 * Drift);
        var kept = 1 - (((next.Xx / within.Xx) + (next.Yy / within.Yy) + (next.Zz / within.Zz)) / size);
        Kept = Math.Clamp(kept, 0, 0.7);
        Factor *= Math.Clamp(scale, 0.9, 1.1);
        Passage = Factor * within;
        Day = Correlated(dx, dy, dz, within);
        return Math.Clamp(scale, 0.9, 1.1);
    }

    /// <summary>Of a wandering the part of its variance that shows between two days so far apart.</summary>
    private static double Returned(int days) => 1 - Math.Exp(-days / WanderDays);

    private static double Pooled(double own, double mean) => (0.5 * own) + (0.5 * mean);

    /// <summary>
    /// Wandering and drift of one balance over its passage noise: the line through the far lags of a constant, a rise that levels off and one that does not, by least
    /// squares in relative terms, neither below the least believed.
    /// </summary>
    private (double Wander, double Drift) Slow(Func<Matrix3, double> of)
    {
        var within = of(_scatter[0].Value);
        Span<double> w = stackalloc double[Lags.Length];
        var (weights, meanY, meanV, meanD) = (0.0, 0.0, 0.0, 0.0);
        for (var i = FarLag; i < Lags.Length; i++)
        {
            // A scatter's relative error falls with the root of its count; what nobody has shown yet, since no cow has so long a past, tells nothing.
            var value = of(_scatter[i].Value) / within;
            w[i] = (_scatter[i].Count - PriorCount + 1) / (value * value);
            weights += w[i];
            meanY += w[i] * value;
            meanV += w[i] * Returned(Lags[i]);
            meanD += w[i] * Lags[i] / 2;
        }

        (meanY, meanV, meanD) = (meanY / weights, meanV / weights, meanD / weights);
        var (vv, vd, dd, vy, dy) = (0.0, 0.0, 0.0, 0.0, 0.0);
        for (var i = FarLag; i < Lags.Length; i++)
        {
            var (y, v, d) = ((of(_scatter[i].Value) / within) - meanY, Returned(Lags[i]) - meanV, (Lags[i] / 2.0) - meanD);
            vv += w[i] * v * v;
            vd += w[i] * v * d;
            dd += w[i] * d * d;
            vy += w[i] * v * y;
            dy += w[i] * d * y;
        }

        (vv, vy) = (vv + WanderWeight, vy + (WanderWeight * UsualWander));
        (dd, dy) = (dd + DriftWeight, dy + (DriftWeight * UsualDrift));
        var determinant = (vv * dd) - (vd * vd);
        var (wander, drift) = (((vy * dd) - (dy * vd)) / determinant, ((dy * vv) - (vy * vd)) / determinant);
        if (drift < LeastDrift)
            (wander, drift) = ((vy - (LeastDrift * vd)) / vv, LeastDrift);
        if (wander < LeastWander)
            (wander, drift) = (LeastWander, Math.Max((dy - (LeastWander * vd)) / dd, LeastDrift));
        return (wander, drift);
    }

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
        writer.Put(Wander);
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
        noise.Wander = reader.Take<Matrix3>();
        noise.Drift = reader.Take<Matrix3>();
        noise.Kept = reader.ReadDouble();
        noise.Factor = reader.ReadDouble();
        return noise;
    }
}
