namespace GaitWatch.Lameness;

/// <summary>What all cows of a herd share: noise and its tails, spread, decision limits, how often cows cross. Read off anew each farm day.</summary>
internal sealed class HerdModel
{
    /// <summary>Days a herd is learnt before its first evidence.</summary>
    private const int LearningDays = 10;

    /// <summary>Passages of a cow in a week before any week is counted: two and a half a day (contract's average barn).</summary>
    private const double FirstPassagesPerWeek = 17.5;

    private long _firstDay = long.MinValue;
    private long _week;
    private long _weekPassages;
    private long _weekCows;
    private double _errorCount;
    private readonly double[] _tailsPrior = LogPrior(new double[CowNoise.Tails.Length]);

    public HerdNoise Noise { get; private set; } = new();

    public NoiseTails Tails { get; private set; } = new();

    public HerdSpread Spread { get; private set; } = new();

    public AlarmLimits Limits { get; private set; } = new();

    /// <summary>The cow at hand as her newest passage makes her: a place to work in, nothing that is kept.</summary>
    public CowEvidence Present { get; } = new();

    /// <summary>Degrees of freedom of the herd's noise, all cows together.</summary>
    public double TailsDof => Tails.Dof;

    /// <summary>Logarithm of how common each of <see cref="CowNoise.Tails"/> is among the cows.</summary>
    public ReadOnlySpan<double> TailsPrior => _tailsPrior;

    /// <summary>Farm day of the newest input, days since 1 January of year 1.</summary>
    public long Day { get; private set; } = long.MinValue;

    /// <summary>Whether evidence may accumulate yet.</summary>
    public bool IsLearnt => Day - _firstDay >= LearningDays;

    /// <summary>How often a cow that crosses does so in a week.</summary>
    public double PassagesPerWeek { get; private set; } = FirstPassagesPerWeek;

    /// <summary>Squared scale of one weight around the cow's own recent weight, of logarithms.</summary>
    public double WeightVariance { get; private set; } = 0.03 * 0.03;

    /// <summary>The measuring error that the noise already holds, balances squared: the mean over passages that tell it.</summary>
    public Vector3 UsualError { get; private set; }

    /// <summary>Brings the herd to a farm day; true when it is a new one.</summary>
    public bool Enter(long day)
    {
        if (day <= Day)
            return false;
        if (_firstDay == long.MinValue)
            _firstDay = day;
        Day = day;
        return true;
    }

    /// <summary>Reads everything off anew.</summary>
    /// <param name="options">The budget.</param>
    /// <param name="means">Means of the cows known well.</param>
    /// <param name="logWeights">Their weights' logarithms.</param>
    /// <param name="cowsOfTails">How many of them have each of <see cref="CowNoise.Tails"/>.</param>
    public void Refresh(LamenessOptions options, List<Vector3> means, List<double> logWeights, double[] cowsOfTails)
    {
        LogPrior(cowsOfTails).CopyTo(_tailsPrior, 0);
        Tails.Choose();
        Tails.Rescaled(Noise.Refresh(Tails.Scale));
        Spread.Refresh(means, logWeights);
        Limits.Solve(options.FalseAlertsPer100CowsPerWeek / 100 / PassagesPerWeek);
    }

    /// <summary>A few cows of each weight of tails are supposed beforehand, most of the middle ones.</summary>
    private static double[] LogPrior(double[] cowsOfTails)
    {
        double[] supposed = [1, 2, 3, 2, 2];
        var counts = cowsOfTails.Zip(supposed, (n, m) => n + m).ToArray();
        var sum = counts.Sum();
        return [.. counts.Select(n => Math.Log(n / sum))];
    }

    /// <summary>Counts a passage for <see cref="PassagesPerWeek"/>.</summary>
    /// <param name="cowWeek">The week in which the cow was last counted; brought up to date.</param>
    public void CountPassage(ref long cowWeek)
    {
        var week = Day / 7;
        if (week != _week)
        {
            if (_weekCows > 0 && week == _week + 1 && _week * 7 >= _firstDay)
                PassagesPerWeek += 0.25 * (Math.Max((double)_weekPassages / _weekCows, 1) - PassagesPerWeek);
            (_week, _weekPassages, _weekCows) = (week, 0, 0);
        }

        _weekPassages++;
        if (cowWeek == week)
            return;
        _weekCows++;
        cowWeek = week;
    }

    /// <summary>Takes in how far a sound cow's weight lay from her own, squared logarithm.</summary>
    public void AddWeight(double squared)
    {
        const double dof = 4;
        var d = squared / WeightVariance;
        WeightVariance *= 1 + (0.001 * (((dof + 1) / (dof + d) * d) - 1));
    }

    /// <summary>What a passage's own measuring error adds to the usual noise, balances squared.</summary>
    public Matrix3 ExtraError(Vector3? error)
    {
        if (error is not { } e)
            return Matrix3.Zero;
        var extra = e - UsualError;
        _errorCount = Math.Min(_errorCount + 1, 2000);
        UsualError += 1 / _errorCount * extra;
        return Matrix3.Diagonal(Math.Max(extra.X, 0), Math.Max(extra.Y, 0), Math.Max(extra.Z, 0));
    }

    public void Save(BinaryWriter writer)
    {
        writer.Write(_firstDay);
        writer.Write(_week);
        writer.Write(_weekPassages);
        writer.Write(_weekCows);
        writer.Write(_errorCount);
        writer.Write(Day);
        writer.Write(PassagesPerWeek);
        writer.Write(WeightVariance);
        writer.Put(UsualError);
        foreach (var p in _tailsPrior)
            writer.Write(p);
        Noise.Save(writer);
        Tails.Save(writer);
        Spread.Save(writer);
        Limits.Save(writer);
    }

    public static HerdModel Load(BinaryReader reader)
    {
        var herd = new HerdModel
        {
            _firstDay = reader.ReadInt64(),
            _week = reader.ReadInt64(),
            _weekPassages = reader.ReadInt64(),
            _weekCows = reader.ReadInt64(),
            _errorCount = reader.ReadDouble(),
            Day = reader.ReadInt64(),
            PassagesPerWeek = reader.ReadDouble(),
            WeightVariance = reader.ReadDouble(),
            UsualError = reader.Take<Vector3>(),
        };
        for (var i = 0; i < herd._tailsPrior.Length; i++)
            herd._tailsPrior[i] = reader.ReadDouble();
        herd.Noise = HerdNoise.Load(reader);
        herd.Tails = NoiseTails.Load(reader);
        herd.Spread = HerdSpread.Load(reader);
        herd.Limits = AlarmLimits.Load(reader);
        return herd;
    }
}
