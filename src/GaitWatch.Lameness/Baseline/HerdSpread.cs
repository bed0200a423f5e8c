namespace GaitWatch.Lameness;

/// <summary>How the cows of a herd differ from each other when sound: what a new cow is expected to be like.</summary>
internal sealed class HerdSpread
{
    /// <summary>Shares of 27.5 % a fore leg and 22.5 % a hind leg, from memory; the herd's own takes over within days.</summary>
    private static readonly Vector3 _firstMean = new(Math.Log(0.275 / 0.225), 0, 0);
    private static readonly Matrix3 _firstCov = Matrix3.Diagonal(0.10 * 0.10, 0.06 * 0.06, 0.06 * 0.06);

    /// <summary>Cows the first guess counts for.</summary>
    private const double PriorCows = 10;

    /// <summary>Where cows lie.</summary>
    public Vector3 Mean { get; private set; } = _firstMean;

    /// <summary>How they differ.</summary>
    public Matrix3 Cov { get; private set; } = _firstCov;

    /// <summary>Natural logarithm of the herd's typical weight (kg), 0 before any is known.</summary>
    public double LogWeight { get; private set; }

    /// <summary>Reads it off the cows known well, once a day.</summary>
    /// <param name="means">Their means.</param>
    /// <param name="logWeights">Their weights' logarithms.</param>
    public void Refresh(List<Vector3> means, List<double> logWeights)
    {
        if (logWeights.Count > 0)
            LogWeight = Median(logWeights);
        if (means.Count < 5)
            return;
        var x = Robust(means, m => m.X);
        var y = Robust(means, m => m.Y);
        var z = Robust(means, m => m.Z);
        var share = means.Count / (means.Count + PriorCows);
        var middle = new Vector3(x.Median, y.Median, z.Median);
        Mean = _firstMean + (share * (middle - _firstMean));
        Cov = (share * Matrix3.Diagonal(x.Variance, y.Variance, z.Variance)) + ((1 - share) * _firstCov);
    }

    private static (double Median, double Variance) Robust(List<Vector3> means, Func<Vector3, double> of)
    {
        var values = means.ConvertAll(m => of(m));
        var median = Median(values);
        var deviation = Median(values.ConvertAll(v => Math.Abs(v - median)));
        // 1.4826 makes the median absolute deviation a normal's standard deviation; a fifth on top, for herds' tails.
        return (median, Math.Pow(1.2 * 1.4826 * deviation, 2));
    }

    private static double Median(List<double> values)
    {
        values.Sort();
        var half = values.Count / 2;
        return values.Count % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    }

    public void Save(BinaryWriter writer)
    {
        writer.Put(Mean);
        writer.Put(Cov);
        writer.Write(LogWeight);
    }

    public static HerdSpread Load(BinaryReader reader) =>
        new() { Mean = reader.Take<Vector3>(), Cov = reader.Take<Matrix3>(), LogWeight = reader.ReadDouble() };
}
