namespace GaitWatch.Lameness;

/// <summary>The residuals of a session's last cows in one balance, each with its precision.</summary>
internal sealed class SessionResiduals
{
    /// <summary>How many are kept; with more the oldest gives way.</summary>
    public const int Kept = 64;

    private readonly double[] _value = new double[Kept];
    private readonly double[] _precision = new double[Kept];
    private int _added;
    private double _usual = 1;

    private int Count => Math.Min(_added, Kept);

    /// <summary>Mean by the session alone; 0 before there is any.</summary>
    public double Mean { get; private set; }

    /// <summary>Its variance; very large before there is any.</summary>
    public double Variance { get; private set; } = 1e6;

    /// <summary>A session begins.</summary>
    public void Clear() => (_added, Mean, Variance) = (0, 0, 1e6);

    /// <summary>Takes in a cow.</summary>
    /// <param name="value">Her residual.</param>
    /// <param name="variance">Its variance.</param>
    /// <param name="usual">Variance of a usual cow's: a more even-tempered one counts no more, else she alone would move the others.</param>
    public void Add(double value, double variance, double usual)
    {
        var place = _added % Kept;
        (_value[place], _precision[place], _usual) = (value, 1 / Math.Sqrt(Math.Max(variance, usual)), usual);
        _added++;
        (Mean, Variance) = SessionMean.Of(_value.AsSpan(0, Count), _precision.AsSpan(0, Count), Mean);
    }

    /// <summary>The mean where sessions differ by a given variance, bounded against single cows.</summary>
    public (double Value, double Variance) Shrunk(double prior) => SessionMean.Shrunk(_value.AsSpan(0, Count), _precision.AsSpan(0, Count), prior, _usual, 0);

    /// <summary>Median of the newest few; there have to be as many.</summary>
    public double Recent(int count)
    {
        Span<double> newest = stackalloc double[count];
        for (var i = 0; i < count; i++)
            newest[i] = _value[(_added - 1 - i) % Kept];
        newest.Sort();
        var half = count / 2;
        return count % 2 == 1 ? newest[half] : (newest[half - 1] + newest[half]) / 2;
    }

    public void Save(BinaryWriter writer)
    {
        writer.Write(_added);
        writer.Write(_usual);
        writer.Write(Mean);
        writer.Write(Variance);
        for (var i = 0; i < Count; i++)
        {
            writer.Write(_value[i]);
            writer.Write(_precision[i]);
        }
    }

    public static SessionResiduals Load(BinaryReader reader)
    {
        var residuals = new SessionResiduals { _added = reader.ReadInt32(), _usual = reader.ReadDouble(), Mean = reader.ReadDouble(), Variance = reader.ReadDouble() };
        for (var i = 0; i < residuals.Count; i++)
            (residuals._value[i], residuals._precision[i]) = (reader.ReadDouble(), reader.ReadDouble());
        return residuals;
    }
}
