using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness;

/// <summary>
/// The decision limits that spend the farm's budget of false flags, no more and no less: one limit on the log likelihood ratio for all rules
/// and cows (shifted by how common a pattern is), such that the false alarms of all of them, at the passages a day as they really are, add up to the budget.
/// </summary>
/// <remarks>
/// One limit for all, rather than one false-alarm rate for all, is Bayes' choice: an alert is then equally probably right whichever rule and cow it comes from. Each
/// rule's rate comes from <see cref="FalseAlarmTable"/> at the sizes (in standard deviations of one passage) that its designed change has had lately.
/// That rate supposes that the herd's noise is what the model says. How far it is not, the herd itself tells: false alarms are too rare to
/// count, but a limit lower by <see cref="ProbeBelow"/> is passed some three times as often, mostly by sound cows, and those passings that come to nothing are
/// counted against what the table predicts. Tails that are off by a little at the lower limit are off by more at the higher one, in the exponent.
/// </remarks>
internal sealed class AlarmLimits
{
    /// <summary>Part of the budget that goes to the sudden-drop rule.</summary>
    private const double SuddenPart = 0.05;

    /// <summary>
    /// Alerts there are, over the sum of what each rule alone would raise: rules see the same passages, so that two often err at once, and a single passage raises
    /// nothing. Measured on simulated surprises of independent passages (FalseAlarmBudgetTests).
    /// </summary>
    private const double IdealRatio = 0.58;

    /// <summary>
    /// The same on herds, where noise is never quite what the model says, before a herd's own count tells. Measured on simulated herds.
    /// </summary>
    private const double FirstRatio = 0.8;

    /// <summary>
    /// Part of the budget that is planned with. The rest goes to what neither table nor probe sees: tags of other cows, the first hours of a wet
    /// day, the first cows over a platform that has just begun to lie. Measured on simulated herds.
    /// </summary>
    private const double PlannedPart = 0.8;

    /// <summary>Passings of the probe that <see cref="FirstRatio"/> counts for.</summary>
    private const double FirstCount = 25;

    /// <summary>How far the probe lies below the limit, log likelihood ratio.</summary>
    private const double ProbeBelow = 1.2;

    /// <summary>A passing of the probe is over when the evidence has fallen below this.</summary>
    public const double Quiet = 1;

    /// <summary>What stays of the count from day to day: a hundred days' memory.</summary>
    private const double CountKeptADay = 0.99;

    /// <summary>What stays of the sizes counted from day to day: a month's memory.</summary>
    private const double KeptADay = 0.97;
    private static readonly int Classes = CowNoise.Tails.Length;
    private static readonly int Rules = WatchedPattern.All.Length * WatchedPattern.DesignsEach;
    private const int Bins = 20;
    private const double SmallestSize = 0.1;
    private const double LargestSize = 14;
    private const double FirstSize = 2;

    /// <summary>A count that has faded below this is none: a table need not be made for it.</summary>
    private const double LeastCount = 1e-3;
    private static readonly double _logStep = Math.Log(LargestSize / SmallestSize) / (Bins - 1);

    private readonly double[] _sizes = new double[Rules * Classes * Bins];

    private readonly double[] _sudden = [.. CowNoise.Tails.Select(_ => 8.0)];
    private double _seen = FirstRatio * FirstCount;
    private double _expected = FirstCount;
    private double _probeRate;
    private long _exposed;

    public AlarmLimits()
    {
        // Before any is counted: the size at which a rule errs most often.
        for (var rule = 0; rule < Rules; rule++)
            CountSize(rule, Classes / 2, FirstSize);
    }

    /// <summary>Limit on the accumulated log likelihood ratio of a pattern of average commonness.</summary>
    public double Limit { get; private set; } = 10;

    /// <summary>Limit of the sudden-drop rule for a cow's weight of tails, standard deviations of one passage.</summary>
    public double Sudden(int tailsIndex) => _sudden[tailsIndex];

    /// <summary>The limit of one pattern.</summary>
    public double For(WatchedPattern pattern) => Limit + pattern.LimitShift;

    /// <summary>The lower limit that is watched to see how often sound cows pass one, of a pattern of average commonness.</summary>
    public double Probe => Limit - ProbeBelow;

    /// <summary>Passings of the probe over those that the table predicts.</summary>
    public double Ratio => _seen / _expected;

    /// <summary>Counts a passage of a cow who is watched and quiet, so that she could pass the probe.</summary>
    public void CountExposed() => _exposed++;

    /// <summary>Counts a passing of the probe that came to nothing.</summary>
    public void CountPassing() => _seen++;

    /// <summary>Counts the size that a rule's designed change had in one passage of a sound cow.</summary>
    /// <param name="rule">Place of the rule: pattern, then design.</param>
    /// <param name="tailsIndex">The cow's weight of tails: its place in <see cref="CowNoise.Tails"/>.</param>
    /// <param name="size">Standard deviations of one passage.</param>
    public void CountSize(int rule, int tailsIndex, double size)
    {
        var bin = (int)Math.Clamp(Math.Round(Math.Log(Math.Max(size, SmallestSize) / SmallestSize) / _logStep), 0, Bins - 1);
        _sizes[(((rule * Classes) + tailsIndex) * Bins) + bin] += 1;
    }

    /// <summary>Solves for the limits, once a day.</summary>
    /// <param name="falseAlertsPerPassage">The budget over the passages a cow makes.</param>
    public void Solve(double falseAlertsPerPassage)
    {
        for (var i = 0; i < _sizes.Length; i++)
            _sizes[i] *= KeptADay;
        _expected += _exposed * _probeRate;
        _exposed = 0;
        (_seen, _expected) = (Remembered(_seen, FirstRatio), Remembered(_expected, 1));
        var planned = PlannedPart * falseAlertsPerPassage;
        var sudden = SuddenPart * planned / WatchedPattern.All.Length;
        // So far out nobody has seen a tail: the next heavier one is supposed.
        for (var i = 0; i < Classes; i++)
            _sudden[i] = -StudentT.InvCDF(0, 1, CowNoise.Tails[Math.Max(i - 1, 0)], sudden);
        var wanted = (1 - SuddenPart) * planned;
        var (low, high) = (1.0, 25.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (Rate(middle) * RatioAt(middle) > wanted)
                low = middle;
            else
                high = middle;
        }

        Limit = (low + high) / 2;
        // Passings that go on to raise are not counted, so not expected either: the budget's worth of them.
        _probeRate = Math.Max(Rate(Probe) - (wanted / Ratio), 0);
    }

    /// <summary>The ratio at the limit: what it is over the ideal at the probe grows in the exponent.</summary>
    private double RatioAt(double limit) => IdealRatio * Math.Pow(Ratio / IdealRatio, limit / Math.Max(limit - ProbeBelow, 1));

    /// <summary>Forgets a day's part of a count, but never the first guess.</summary>
    private static double Remembered(double count, double first) => (CountKeptADay * count) + ((1 - CountKeptADay) * first * FirstCount);

    private double Rate(double limit)
    {
        var rate = 0.0;
        for (var rule = 0; rule < Rules; rule++)
        {
            var own = limit + WatchedPattern.All[rule / WatchedPattern.DesignsEach].LimitShift;
            var (sum, weight) = (0.0, 0.0);
            for (var tails = 0; tails < Classes; tails++)
            {
                for (var bin = 0; bin < Bins; bin++)
                {
                    var count = _sizes[(((rule * Classes) + tails) * Bins) + bin];
                    if (count < LeastCount)
                        continue;
                    weight += count;
                    sum += count * FalseAlarmTable.For(tails).Rate(SmallestSize * Math.Exp(bin * _logStep), own);
                }
            }

            if (weight > 0)
                rate += sum / weight;
        }

        return rate;
    }

    public void Save(BinaryWriter writer)
    {
        foreach (var s in _sizes)
            writer.Write(s);
        writer.Write(_seen);
        writer.Write(_expected);
        writer.Write(_probeRate);
        writer.Write(_exposed);
        writer.Write(Limit);
        foreach (var s in _sudden)
            writer.Write(s);
    }

    public static AlarmLimits Load(BinaryReader reader)
    {
        var limits = new AlarmLimits();
        for (var i = 0; i < limits._sizes.Length; i++)
            limits._sizes[i] = reader.ReadDouble();
        limits._seen = reader.ReadDouble();
        limits._expected = reader.ReadDouble();
        limits._probeRate = reader.ReadDouble();
        limits._exposed = reader.ReadInt64();
        limits.Limit = reader.ReadDouble();
        for (var i = 0; i < limits._sudden.Length; i++)
            limits._sudden[i] = reader.ReadDouble();
        return limits;
    }
}
