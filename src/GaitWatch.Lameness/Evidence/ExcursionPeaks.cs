namespace GaitWatch.Lameness;

/// <summary>
/// How far the evidence on sound cows goes by itself in this herd, against what the table of false alarms predicts: every excursion that comes to nothing is counted by its
/// peak. False alarms are too rare to count, lower peaks are not; how this herd's noise differs from the model's shows in how seen over predicted goes with the height.
/// </summary>
/// <remarks>
/// Seen over predicted is taken as exp(a + b height), by Poisson regression on the classes of peaks, with what is usual in herds as its prior. It is a peaks-over-threshold
/// estimate (Pickands J. 1975, Ann Stat 3:119-131) in which the model's own tail stands where an exponential usually does.
/// </remarks>
internal sealed class ExcursionPeaks
{
    /// <summary>Lowest peak counted and width of a class of peaks, log likelihood ratio.</summary>
    private const double Lowest = 5.5;
    private const double Width = 0.5;
    private const int Classes = 12;

    /// <summary>
    /// What is usual before a herd has told, at the height <see cref="Reference"/>, how it goes with the height, and how herds differ in both. Measured on simulated herds
    /// (seeds of development, not those reported); small noisy herds lie above it, large quiet ones below.
    /// </summary>
    private const double Reference = 7.5;
    private const double UsualLog = 0;
    private const double UsualSpread = 0.3;
    private const double UsualSlope = 0.16;
    private const double SlopeSpread = 0.18;

    /// <summary>What stays of the counts from day to day: a hundred days' memory.</summary>
    private const double KeptADay = 0.99;

    private const int Steps = 12;

    private readonly double[] _seen = new double[Classes];
    private readonly double[] _predicted = new double[Classes];
    private double _log = UsualLog;
    private double _slope = UsualSlope;

    /// <summary>Excursions beyond a height that there are over those predicted.</summary>
    public double RatioAt(double height) => Math.Exp(_log + (_slope * (height - Reference)));

    /// <summary>An excursion of a sound cow's evidence came to nothing.</summary>
    public void Count(double peak)
    {
        var c = (int)Math.Floor((peak - Lowest) / Width);
        if (c >= 0 && c < Classes)
            _seen[c]++;
    }

    /// <summary>A day is over.</summary>
    /// <param name="exposed">Passages in it at which an excursion could have begun or gone on.</param>
    /// <param name="rate">Predicted excursions per passage that go beyond a height.</param>
    /// <param name="limit">The height at which an alert was raised: what went beyond did not come to nothing.</param>
    public void Expect(long exposed, Func<double, double> rate, double limit)
    {
        var above = exposed > 0 ? rate(Math.Min(Lowest, limit)) : 0;
        for (var c = 0; c < Classes; c++)
        {
            _seen[c] *= KeptADay;
            _predicted[c] *= KeptADay;
            var (from, to) = (Lowest + (c * Width), Math.Min(Lowest + ((c + 1) * Width), limit));
            if (exposed == 0 || to <= from)
                continue;
            var beyond = rate(to);
            _predicted[c] += exposed * (above - beyond);
            above = beyond;
        }

        Fit();
    }

    /// <summary>Newton's method from the prior; the posterior has one maximum.</summary>
    private void Fit()
    {
        const double weight = 1 / (UsualSpread * UsualSpread);
        const double slopeWeight = 1 / (SlopeSpread * SlopeSpread);
        var (a, b) = (UsualLog, UsualSlope);
        for (var step = 0; step < Steps; step++)
        {
            var (ga, gb) = ((a - UsualLog) * weight, (b - UsualSlope) * slopeWeight);
            var (aa, ab, bb) = (weight, 0.0, slopeWeight);
            for (var c = 0; c < Classes; c++)
            {
                var height = Lowest + ((c + 0.5) * Width) - Reference;
                var mean = _predicted[c] * Math.Exp(a + (b * height));
                ga += mean - _seen[c];
                gb += (mean - _seen[c]) * height;
                aa += mean;
                ab += mean * height;
                bb += mean * height * height;
            }

            var determinant = (aa * bb) - (ab * ab);
            a -= Math.Clamp(((ga * bb) - (gb * ab)) / determinant, -0.5, 0.5);
            b -= Math.Clamp(((gb * aa) - (ga * ab)) / determinant, -0.2, 0.2);
        }

        (_log, _slope) = (a, b);
    }

    public void Save(BinaryWriter writer)
    {
        foreach (var n in _seen)
            writer.Write(n);
        foreach (var n in _predicted)
            writer.Write(n);
        writer.Write(_log);
        writer.Write(_slope);
    }

    public static ExcursionPeaks Load(BinaryReader reader)
    {
        var peaks = new ExcursionPeaks();
        for (var c = 0; c < Classes; c++)
            peaks._seen[c] = reader.ReadDouble();
        for (var c = 0; c < Classes; c++)
            peaks._predicted[c] = reader.ReadDouble();
        peaks._log = reader.ReadDouble();
        peaks._slope = reader.ReadDouble();
        return peaks;
    }
}
