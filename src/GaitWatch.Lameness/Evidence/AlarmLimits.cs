using MathNet.Numerics.Distributions;

namespace GaitWatch.Lameness;

/// <summary>
/// The decision limits that spend the farm's budget of false flags, no more and no less: one limit on the log likelihood ratio for all rules
/// and cows (shifted by how common a pattern is), such that the false alarms of all of them, at the passages a day as they really are, add up to the budget.
/// </summary>
/// <remarks>
/// One limit for all, rather than one false-alarm rate for all, is Bayes' choice: an alert is then equally probably right whichever rule and cow it comes from. Each
/// rule's rate comes from <see cref="FalseAlarmTable"/> at the sizes (in standard deviations of one passage) that its designed change has had lately.
/// </remarks>
internal sealed class AlarmLimits
{
    /// <summary>Part of the budget that goes to the sudden-drop rule.</summary>
    private const double SuddenPart = 0.05;

    /// <summary>
    /// The rules see the same passages, so that two often err at once: alerts there are, over the sum of what each rule alone would raise.
    /// Measured on simulated surprises (FalseAlarmBudgetTests).
    /// </summary>
    private const double Union = 0.62;

    /// <summary>What stays of the sizes counted from day to day: a month's memory.</summary>
    private const double KeptADay = 0.97;
    private const int Bins = 24;
    private const double SmallestSize = 0.1;
    private const double LargestSize = 10;
    private static readonly double _logStep = Math.Log(LargestSize / SmallestSize) / (Bins - 1);

    private readonly double[] _sizes = new double[WatchedPattern.All.Length * WatchedPattern.DesignsEach * Bins];

    /// <summary>Limit on the accumulated log likelihood ratio of a pattern of average commonness.</summary>
    public double Limit { get; private set; } = 10;

    /// <summary>Limit of the sudden-drop rule, standard deviations of one passage.</summary>
    public double Sudden { get; private set; } = 8;

    /// <summary>The limit of one pattern.</summary>
    public double For(WatchedPattern pattern) => Limit + pattern.LimitShift;

    /// <summary>Counts the size that a rule's designed change had in one passage of a sound cow.</summary>
    /// <param name="rule">Place of the rule: pattern, then design.</param>
    /// <param name="size">Standard deviations of one passage.</param>
    public void CountSize(int rule, double size)
    {
        var bin = (int)Math.Clamp(Math.Round(Math.Log(Math.Max(size, SmallestSize) / SmallestSize) / _logStep), 0, Bins - 1);
        _sizes[(rule * Bins) + bin] += 1;
    }

    /// <summary>Solves for the limits, once a day.</summary>
    /// <param name="falseAlertsPerPassage">The budget over the passages a cow makes.</param>
    /// <param name="tailsIndex">Place of the herd's tails in <see cref="FalseAlarmTable.Tails"/>.</param>
    public void Solve(double falseAlertsPerPassage, int tailsIndex)
    {
        for (var i = 0; i < _sizes.Length; i++)
            _sizes[i] *= KeptADay;
        var table = FalseAlarmTable.For(tailsIndex);
        var sudden = SuddenPart * falseAlertsPerPassage / WatchedPattern.All.Length;
        Sudden = -StudentT.InvCDF(0, 1, FalseAlarmTable.Tails[tailsIndex], sudden);
        var wanted = (1 - SuddenPart) * falseAlertsPerPassage;
        var (low, high) = (1.0, 25.0);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            if (Rate(table, middle) > wanted)
                low = middle;
            else
                high = middle;
        }

        Limit = (low + high) / 2;
    }

    private double Rate(FalseAlarmTable table, double limit)
    {
        var rate = 0.0;
        for (var rule = 0; rule < _sizes.Length / Bins; rule++)
        {
            var own = limit + WatchedPattern.All[rule / WatchedPattern.DesignsEach].LimitShift;
            var (sum, weight) = (0.0, 0.0);
            for (var bin = 0; bin < Bins; bin++)
            {
                var count = _sizes[(rule * Bins) + bin];
                if (count <= 0)
                    continue;
                weight += count;
                sum += count * table.Rate(SmallestSize * Math.Exp(bin * _logStep), own);
            }

            if (weight > 0)
                rate += sum / weight;
        }

        return Union * rate;
    }

    public void Save(BinaryWriter writer)
    {
        foreach (var s in _sizes)
            writer.Write(s);
        writer.Write(Limit);
        writer.Write(Sudden);
    }

    public static AlarmLimits Load(BinaryReader reader)
    {
        var limits = new AlarmLimits();
        for (var i = 0; i < limits._sizes.Length; i++)
            limits._sizes[i] = reader.ReadDouble();
        limits.Limit = reader.ReadDouble();
        limits.Sudden = reader.ReadDouble();
        return limits;
    }
}
