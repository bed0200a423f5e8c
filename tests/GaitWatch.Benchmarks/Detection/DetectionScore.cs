using GaitWatch.Gait;

namespace GaitWatch.Benchmarks;

/// <summary>A judged trouble and what a detector made of it.</summary>
/// <param name="Herd">Place of its herd.</param>
/// <param name="Trouble">The trouble.</param>
/// <param name="First">The first flag within 28 days of onset; null when there was none.</param>
internal sealed record Outcome(int Herd, TrueTrouble Trouble, Flag? First)
{
    /// <summary>Whether the foot was treated within 28 days and before any flag: the cow is in hand, and a flag would come too late to be early.</summary>
    public bool IsTreatedFirst => Trouble.TreatedDay < Math.Min(First?.Day ?? double.PositiveInfinity, Trouble.OnsetDay + HerdHistory.MissDays);

    /// <summary>Whether there was a flag within 28 days, and before the foot was treated.</summary>
    public bool IsFound => First is not null && !IsTreatedFirst;

    /// <summary>Days from onset to the flag; to the treatment where that came first; a miss counted as 28.</summary>
    public double Delay => Math.Min(First?.Day ?? double.PositiveInfinity, Math.Min(Trouble.TreatedDay, Trouble.OnsetDay + HerdHistory.MissDays)) - Trouble.OnsetDay;

    /// <summary>Whether the first flag names a sore leg.</summary>
    public bool IsRightLeg => First is not null && Trouble.IsSore(First.Leg);
}

/// <summary>What a detector's flags are worth on some herds, by one scoring for all detectors.</summary>
/// <remarks>
/// False is a flag after the learning days that is raised outside a trouble's onset to recovery, or names a sound leg. A false flag of a cow that had one in the thirty days before is a
/// repeat, told apart, as are further flags of a trouble that was told of. Weeks are those in which a cow crossed.
/// </remarks>
internal sealed class DetectionScore
{
    private const double RepeatDays = 30;

    private readonly List<Outcome> _outcomes = [];
    private readonly List<(HerdHistory History, Flag Flag)> _false = [];

    public DetectionScore(IReadOnlyList<HerdHistory> histories, IReadOnlyList<List<Flag>> flags)
    {
        for (var h = 0; h < histories.Count; h++)
            Add(h, histories[h], flags[h]);
        CowWeeks = histories.Sum(h => h.CowWeeks);
        SoundCrossings = histories.Sum(h => h.SoundCrossings);
    }

    public IReadOnlyList<Outcome> Outcomes => _outcomes;

    public int FalseFlags => _false.Count;

    public int Repeats { get; private set; }

    public int RepeatsOnLame { get; private set; }

    public double CowWeeks { get; }

    public long SoundCrossings { get; }

    public double FalsePer100CowWeeks => 100 * FalseFlags / CowWeeks;

    /// <summary>Part of some troubles found within 28 days, those left out that were treated before; NaN for none.</summary>
    public static double Found(IEnumerable<Outcome> of) => of.Where(o => !o.IsTreatedFirst).Select(o => o.IsFound ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    public static double MeanDelay(IEnumerable<Outcome> of) => of.Select(o => o.Delay).DefaultIfEmpty(double.NaN).Average();

    public static double Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length == 0 ? double.NaN : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    public double RightLeg => _outcomes.Where(o => o.IsFound).Select(o => o.IsRightLeg ? 1.0 : 0).DefaultIfEmpty(double.NaN).Average();

    public double OnsetError => Median(_outcomes.Where(o => o.IsFound && !double.IsNaN(o.First!.OnsetDay)).Select(o => Math.Abs(o.First!.OnsetDay - o.Trouble.OnsetDay)));

    /// <summary>Part of the troubles found whose onset lies between the days stated, of those for which any are stated; NaN for none.</summary>
    public double OnsetCovered => Dated.Select(o => o.Trouble.OnsetDay >= o.First!.OnsetInterval.Earliest && o.Trouble.OnsetDay <= o.First.OnsetInterval.Latest ? 1.0 : 0)
        .DefaultIfEmpty(double.NaN).Average();

    /// <summary>Median of the days between the two.</summary>
    public double OnsetWidth => Median(Dated.Select(o => o.First!.OnsetInterval.Latest - o.First.OnsetInterval.Earliest));

    private IEnumerable<Outcome> Dated => _outcomes.Where(o => o.IsFound && !double.IsNaN(o.First!.OnsetInterval.Earliest));

    public double DropError => Median(_outcomes.Where(o => o.IsFound && o.IsRightLeg && !double.IsNaN(o.First!.DropPercent))
        .Select(o => Math.Abs(o.First!.DropPercent - (100 * o.Trouble.DropAt(o.First.Day)))));

    /// <summary>False flags in the days of the platforms' sudden faults and the day after.</summary>
    public int FaultFlags => _false.Count(f => f.History.Spec.PlatformFaults.Any(p => f.Flag.Day >= p.FirstDay && f.Flag.Day < p.FirstDay + p.Days + 1));

    /// <summary>How many of those there would be by the rate of all other days.</summary>
    public double FaultFlagsByChance(IReadOnlyList<HerdHistory> histories)
    {
        var faultDays = histories.Sum(h => h.Spec.PlatformFaults.Sum(p => p.Days + 1.0));
        var days = histories.Sum(h => h.Spec.Days - HerdHistory.LearningDays);
        return (FalseFlags - FaultFlags) * faultDays / (days - faultDays);
    }

    /// <summary>False flags that name the leg opposite a healing one, until thirty days after it healed.</summary>
    public int OppositeWhileHealing => _false.Count(f => f.History.Troubles.Any(t =>
        t.Cow == f.Flag.Cow && !t.IsPaired && f.Flag.Leg == t.Leg.Opposite() && f.Flag.Day > t.HealingDay && f.Flag.Day < t.HealedDay + RepeatDays));

    /// <summary>False flags on a cow that was lame on another leg, or had been within thirty days.</summary>
    public int OnLame => _false.Count(f => f.History.Troubles.Any(t => t.Cow == f.Flag.Cow && f.Flag.Day >= t.OnsetDay && f.Flag.Day < t.HealedDay + RepeatDays));

    /// <summary>How sure the first flags were of each leg, and whether it was sore.</summary>
    public IEnumerable<(double Probability, bool IsSore)> LegCalls => _outcomes
        .Where(o => o.IsFound && o.First!.LegProbability is not null)
        .SelectMany(o => Legs.All.Select(leg => (o.First!.LegProbability!.Value[leg], o.Trouble.IsSore(leg))));

    /// <summary>The same for the leg that was named.</summary>
    public IEnumerable<(double Probability, bool IsSore)> NamedLegCalls => _outcomes
        .Where(o => o.IsFound && o.First!.LegProbability is not null)
        .Select(o => (o.First!.LegProbability!.Value[o.First.Leg], o.IsRightLeg));

    /// <summary>Every false flag with its herd.</summary>
    public IReadOnlyList<(HerdHistory History, Flag Flag)> False => _false;

    private void Add(int herd, HerdHistory history, List<Flag> flags)
    {
        var byCow = flags.ToLookup(f => f.Cow);
        foreach (var trouble in history.Troubles.Where(t => t.IsJudged))
        {
            var first = byCow[trouble.Cow].Where(f => f.Day >= trouble.OnsetDay && f.Day < trouble.OnsetDay + HerdHistory.MissDays).MinBy(f => f.Day);
            _outcomes.Add(new Outcome(herd, trouble, first));
        }

        foreach (var cow in byCow)
        {
            var lastFalse = double.NegativeInfinity;
            var told = new HashSet<TrueTrouble>();
            foreach (var flag in cow.Where(f => !f.IsWorsening).OrderBy(f => f.Day))
            {
                var its = history.Troubles.Find(t => t.Cow == flag.Cow && t.IsOn(flag.Day) && t.IsSore(flag.Leg));
                if (its is not null)
                {
                    RepeatsOnLame += told.Add(its) ? 0 : 1;
                    continue;
                }

                var isRepeat = flag.Day - lastFalse < RepeatDays;
                lastFalse = flag.Day;
                if (flag.Day < HerdHistory.LearningDays)
                    continue;
                if (isRepeat)
                    Repeats++;
                else
                    _false.Add((history, flag));
            }
        }
    }
}
