using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>A simulated herd's history: what GaitWatch is told, and what was true.</summary>
internal sealed class HerdHistory
{
    /// <summary>A herd's learning, which the budget leaves out (contract).</summary>
    public const double LearningDays = 35;

    /// <summary>A trouble not found in so many days counts as found after as many.</summary>
    public const double MissDays = 28;

    private readonly SimulatedHerd _herd;
    private readonly DateTimeOffset _start;
    private readonly Dictionary<string, int> _places;

    private HerdHistory(HerdSpec spec)
    {
        Spec = spec;
        _herd = new SimulatedHerd(spec);
        _start = new DateTimeOffset(spec.Start, TimeOnly.MinValue, TimeSpan.Zero);
        _places = _herd.Cows.Select((cow, i) => (cow.Number, i)).ToDictionary(c => c.Number, c => c.i);
    }

    /// <summary>What the herd is like.</summary>
    public HerdSpec Spec { get; }

    /// <summary>Every accepted passage with a tag, by time.</summary>
    public List<Crossing> Crossings { get; } = [];

    /// <summary>The truth.</summary>
    public List<TrueTrouble> Troubles { get; } = [];

    /// <summary>Weeks in which a cow crossed, over all cows, after the learning.</summary>
    public double CowWeeks { get; private set; }

    /// <summary>Crossings of sound cows after the learning.</summary>
    public long SoundCrossings { get; private set; }

    /// <summary>Which cows' scatter is heavy-tailed.</summary>
    public bool IsHeavyTailed(int cow) => _herd.Cows[cow].IsHeavyTailed;

    /// <summary>Whether she is near calving: sixty days before to thirty after.</summary>
    public bool IsNearCalving(int cow, double day) => _herd.Cows[cow].Calvings.Any(c => day > c - 60 && day < c + 30);

    /// <summary>Whether something was done to her feet in the fortnight before.</summary>
    public bool IsNearTrim(int cow, double day) => _herd.Cows[cow].Findings.Any(f => day >= DayOf(f.At) && day < DayOf(f.At) + 14);

    /// <summary>Place of a cow by her number.</summary>
    public int PlaceOf(string cow) => _places[cow];

    /// <summary>Days from the history's first.</summary>
    public double DayOf(DateTimeOffset at) => (at - _start).TotalDays;

    /// <summary>Draws a herd and hands its inputs, in the order of a history, to a detector; only what is small is kept.</summary>
    public static HerdHistory Of(HerdSpec spec, Action<HerdHistory, List<HerdInput>> detect)
    {
        var history = new HerdHistory(spec);
        var inputs = history.Draw();
        history.Judge();
        detect(history, inputs);
        return history;
    }

    private List<HerdInput> Draw()
    {
        var cowByEid = _herd.Cows.ToDictionary(c => c.Eid, c => c.Number);
        var inputs = new List<HerdInput>();
        var seen = new HashSet<string>();
        var register = new Dictionary<string, RegisterEntry>();
        foreach (var told in _herd.Events())
        {
            switch (told)
            {
                case PassageEvent { Eid: { } eid } p when seen.Add(p.Id):
                    Pass(p, cowByEid[eid], inputs);
                    break;
                case RegisterEvent r:
                    var before = register.GetValueOrDefault(r.Entry.Cow);
                    register[r.Entry.Cow] = r.Entry;
                    if (before is not null && r.Entry.CalvedOn != before.CalvedOn)
                        Know(new Calved(r.Entry.Cow, r.At));
                    if (before is not null && r.Entry.DriedOffOn is not null && before.DriedOffOn is null)
                        Know(new DriedOff(r.Entry.Cow, r.At));
                    if (r.Entry.LeftOn is not null)
                        Know(new LeftHerd(r.Entry.Cow, r.At));
                    break;
                case FindingEvent f:
                    Know(new FootTreated(
                        f.Cow, f.At, (Leg)(int)f.Finding.Foot, f.Finding.Actions.Contains("block"), f.Finding.Actions.Contains("block-off")));
                    break;
            }
        }

        inputs.Sort(HerdInput.Order);
        Crossings.Sort((a, b) => a.Day.CompareTo(b.Day));
        return inputs;

        void Know(CowEvent known) => inputs.Add(new CowEventInput(known, FormattableString.Invariant($"e{inputs.Count:0000000}")));
    }

    private void Pass(PassageEvent p, string cow, List<HerdInput> inputs)
    {
        _ = Eid.TryParse(p.Eid, out var tag, out _);
        var load = new PerLeg<double>(p.LoadKg.Lf, p.LoadKg.Rf, p.LoadKg.Lh, p.LoadKg.Rh);
        var passage = new DevicePassage(p.Id, tag, p.At, p.EndedAt, load).ToPassage(Spec.Platform, new GaitOptions());
        if (!passage.IsAccepted)
            return;
        inputs.Add(new PassageInput(cow, passage));
        var shares = passage.Legs.Select(leg => leg.Share!.Value);
        var sound = new PerLeg<double>(p.SoundShares.Lf, p.SoundShares.Rf, p.SoundShares.Lh, p.SoundShares.Rh);
        Crossings.Add(new Crossing(
            PlaceOf(cow), DayOf(p.EndedAt), shares.Select(share => (float)share), Balances.FromShares(shares), Balances.FromShares(sound), (float)p.ScatterLevel, p.TrueCow == cow));
    }

    /// <summary>Of a pair when both are healed.</summary>
    private double HealedDay(LamenessEpisode episode) => _herd.Episodes
        .Where(o => o.Cow == episode.Cow && (o == episode || (episode.IsPaired && o.OnsetAt == episode.OnsetAt)))
        .Max(o => o.HealedAt is { } healed ? DayOf(healed) : double.PositiveInfinity);

    private void Judge()
    {
        var days = Crossings.GroupBy(c => c.Cow).ToDictionary(g => g.Key, g => g.Select(c => c.Day).ToList());
        var all = new List<TrueTrouble>();
        foreach (var e in _herd.Episodes)
        {
            // Of a pair one entry: the worse leg's.
            if (e.IsPaired && _herd.Episodes.Any(o => o.Cow == e.Cow && o.OnsetAt == e.OnsetAt && o.Foot == e.Foot.Opposite() && o.PlateauDrop > e.PlateauDrop))
                continue;
            all.Add(new TrueTrouble(
                PlaceOf(e.Cow), (Leg)(int)e.Foot, e.IsPaired, DayOf(e.OnsetAt), e.RampDays, e.PlateauDrop,
                e.Healing.IsEmpty ? double.PositiveInfinity : DayOf(e.Healing[0].At),
                HealedDay(e),
                e.TreatedAt is { } treated ? DayOf(treated) : double.PositiveInfinity,
                day => e.DropAt(_start.AddDays(day)), false));
        }

        foreach (var t in all)
        {
            var judged = t.OnsetDay > LearningDays && t.OnsetDay < Spec.Days - MissDays
                && days.TryGetValue(t.Cow, out var crossed) && crossed.Exists(d => d < t.OnsetDay - 21)
                && crossed.Count(d => d > t.OnsetDay && d < t.OnsetDay + MissDays) >= 20
                && !all.Exists(o => o != t && o.Cow == t.Cow && o.OnsetDay <= t.OnsetDay && o.HealedDay > t.OnsetDay);
            Troubles.Add(t with { IsJudged = judged });
        }

        var troubled = Troubles.ToLookup(t => t.Cow);
        CowWeeks = Crossings.Where(c => c.Day >= LearningDays).Select(c => (c.Cow, (int)(c.Day / 7))).Distinct().Count();
        SoundCrossings = Crossings.Count(c => c.Day >= LearningDays && !troubled[c.Cow].Any(t => t.IsOn(c.Day)));
    }
}
