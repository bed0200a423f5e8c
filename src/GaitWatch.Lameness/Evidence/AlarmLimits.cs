using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace GaitWatch.Lameness;

/// <summary>
/// The decision limits that spend the farm's budget of false flags, no more and no less: one limit on the log likelihood ratio for all rules
/// and cows (shifted by how common a pattern is), such that the false alarms of all of them, at the passages a day as they really are, add up to the budget.
/// </summary>
/// <remarks>
/// One limit for all, rather than one false-alarm rate for all, is Bayes' choice: an alert is then equally probably right whichever rule and cow it comes from. Each
/// rule's rate comes from <see cref="FalseAlarmTable"/> at the sizes (in standard deviations of one passage) that its designed change has had lately.
/// That rate supposes that rules and passages are independent and the herd's noise is what the model says. How far they are not, the herd itself tells, twice: by the excursions
/// of sound cows' evidence that come to nothing (<see cref="ExcursionPeaks"/>), and by the alerts that turn out to be false, which knows of what no table does: tags of
/// other cows, a wet floor's first hours, a leg that heals.
/// </remarks>
internal sealed class AlarmLimits
{
    /// <summary>Part of the budget that goes to the sudden-drop rule.</summary>
    private const double SuddenPart = 0.06;

    /// <summary>
    /// Part of the budget that is planned with. The rest goes to what is false and never seen to be: on cows that leave, that are treated before it shows. Measured on simulated herds
    /// (seeds of development).
    /// </summary>
    private const double PlannedPart = 0.97;

    /// <summary>An alert over so soon, by itself, was most likely none: lame cows that nobody treats do not heal in days.</summary>
    private const double SoonOverDays = 21;

    /// <summary>Two a day.</summary>
    private const double UsualPassagesPerWeek = 14;

    /// <summary>
    /// Alerts that are seen to be false, over soon or closed by hand as such, over the false alerts that the budget counts. Above one: some true ones are among them. Measured on
    /// simulated herds.
    /// </summary>
    private const double SeenFalse = 1.15;

    /// <summary>Alerts seen to be false that the prior, a budget spent as planned, counts for.</summary>
    private const double FalsePrior = 4;

    /// <summary>An excursion is over when the evidence has fallen below this.</summary>
    public const double Quiet = 1;

    /// <summary>What stays of the count from day to day: a hundred days' memory.</summary>
    private const double CountKeptADay = 0.99;

    /// <summary>The least part of the passages that is believed to be of cows watched: sparing a herd of lame ones a flood.</summary>
    private const double LeastWatched = 0.6;

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
    private const double SmallestLimit = 1;
    private const double LargestLimit = 25;
    private static readonly double _logStep = Math.Log(LargestSize / SmallestSize) / (Bins - 1);
    private static readonly FalseAlarmTable.SizePlace[] _sizeOfBin =
        [.. Enumerable.Range(0, Bins).Select(bin => FalseAlarmTable.PlaceOfSize(SmallestSize * Math.Exp(bin * _logStep)))];

    private readonly double[] _sizes = new double[Rules * Classes * Bins];

    private readonly double[] _sudden = [.. CowNoise.Tails.Select(_ => 8.0)];
    private ExcursionPeaks _peaks = new();
    private double _falseSeen;
    private double _falseExpected;
    private long _exposed;
    private long _crossed;
    private double _watchedShare = 1;

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

    /// <summary>Counts a passage of a cow who is watched and flagged for nothing.</summary>
    public void CountExposed() => _exposed++;

    /// <summary>Within which time an alert that is over by itself was most likely none: longer where cows cross seldom, since it takes as many passages to see.</summary>
    public static TimeSpan SoonOver(double passagesPerWeek) => TimeSpan.FromDays(SoonOverDays * Math.Clamp(UsualPassagesPerWeek / passagesPerWeek, 1, 2));

    /// <summary>Counts a passage of any cow: the budget is per cow that crosses, a cow already flagged among them.</summary>
    public void CountCrossed() => _crossed++;

    /// <summary>Counts an excursion of such a cow's evidence that came to nothing, by its highest.</summary>
    public void CountPeak(double peak) => _peaks.Count(peak);

    /// <summary>Counts an alert that turned out to be false.</summary>
    public void CountFalse() => _falseSeen++;

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
        _peaks.Expect(_exposed, Rate, Limit);
        _falseSeen *= CountKeptADay;
        if (_crossed > 0)
            _watchedShare = (KeptADay * _watchedShare) + ((1 - KeptADay) * Math.Max((double)_exposed / _crossed, LeastWatched));
        var planned = PlannedPart * falseAlertsPerPassage / _watchedShare;
        var expected = (_peaks.RatioAt(Limit) * Rate(Limit)) + (SuddenPart * planned);
        _falseExpected = (CountKeptADay * _falseExpected) + (_exposed * SeenFalse * expected);
        (_exposed, _crossed) = (0, 0);
        var sudden = SuddenPart * planned / WatchedPattern.All.Length;
        // So far out nobody has seen a tail: the next heavier one is supposed.
        for (var i = 0; i < Classes; i++)
            _sudden[i] = -StudentT.InvCDF(0, 1, CowNoise.Tails[Math.Max(i - 1, 0)], sudden);
        var wanted = (1 - SuddenPart) * planned;
        var ratio = (FalsePrior + _falseSeen) / (FalsePrior + _falseExpected);
        Limit = Root(limit => Math.Log(ratio * _peaks.RatioAt(limit) * Rate(limit) / wanted));
    }

    // The logarithm of a false-alarm rate goes almost straight down with the limit: a handful of steps.
    private static double Root(Func<double, double> excess) =>
        excess(SmallestLimit) <= 0 ? SmallestLimit
        : excess(LargestLimit) >= 0 ? LargestLimit
        : Brent.FindRoot(excess, SmallestLimit, LargestLimit, 1e-10);

    private double Rate(double limit)
    {
        var rate = 0.0;
        for (var rule = 0; rule < Rules; rule++)
        {
            var at = FalseAlarmTable.Place(limit + WatchedPattern.All[rule / WatchedPattern.DesignsEach].LimitShift);
            var (sum, weight) = (0.0, 0.0);
            for (var tails = 0; tails < Classes; tails++)
            {
                for (var bin = 0; bin < Bins; bin++)
                {
                    var count = _sizes[(((rule * Classes) + tails) * Bins) + bin];
                    if (count < LeastCount)
                        continue;
                    weight += count;
                    sum += count * FalseAlarmTable.For(tails).Rate(_sizeOfBin[bin], at);
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
        _peaks.Save(writer);
        writer.Write(_falseSeen);
        writer.Write(_falseExpected);
        writer.Write(_exposed);
        writer.Write(_crossed);
        writer.Write(_watchedShare);
        writer.Write(Limit);
        foreach (var s in _sudden)
            writer.Write(s);
    }

    public static AlarmLimits Load(BinaryReader reader)
    {
        var limits = new AlarmLimits();
        for (var i = 0; i < limits._sizes.Length; i++)
            limits._sizes[i] = reader.ReadDouble();
        limits._peaks = ExcursionPeaks.Load(reader);
        limits._falseSeen = reader.ReadDouble();
        limits._falseExpected = reader.ReadDouble();
        limits._exposed = reader.ReadInt64();
        limits._crossed = reader.ReadInt64();
        limits._watchedShare = reader.ReadDouble();
        limits.Limit = reader.ReadDouble();
        for (var i = 0; i < limits._sudden.Length; i++)
            limits._sudden[i] = reader.ReadDouble();
        return limits;
    }
}
