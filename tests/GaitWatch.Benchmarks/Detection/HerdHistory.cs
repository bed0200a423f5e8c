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

    private readonly DateTimeOffset _start;
    private readonly List<HerdInput> _inputs = [];
    private readonly Dictionary<string, int> _places = [];
    private readonly Dictionary<int, List<double>> _calvings = [];
    private readonly Dictionary<int, List<double>> _treatments = [];
    private readonly HashSet<int> _heavyTailed = [];

    /// <summary>An empty history.</summary>
    /// <param name="spec">What the herd is like, as far as the first source's words say it.</param>
    /// <param name="start">Its first instant.</param>
    public HerdHistory(HerdSpec spec, DateTimeOffset start) => (Spec, _start) = (spec, start);

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

    /// <summary>Whether her scatter is heavy-tailed.</summary>
    public bool IsHeavyTailed(int cow) => _heavyTailed.Contains(cow);

    /// <summary>Whether she is near calving: sixty days before to thirty after.</summary>
    public bool IsNearCalving(int cow, double day) => _calvings.TryGetValue(cow, out var days) && days.Exists(c => day > c - 60 && day < c + 30);

    /// <summary>Whether something was done to her feet in the fortnight before.</summary>
    public bool IsNearTrim(int cow, double day) => _treatments.TryGetValue(cow, out var days) && days.Exists(t => day >= t && day < t + 14);

    /// <summary>Place of a cow by her number.</summary>
    public int PlaceOf(string cow) => _places.TryGetValue(cow, out var place) ? place : _places[cow] = _places.Count;

    /// <summary>Days from the history's first.</summary>
    public double DayOf(DateTimeOffset at) => (at - _start).TotalDays;

    /// <summary>Notes that a cow's scatter is heavy-tailed.</summary>
    public void AddHeavyTailed(string cow) => _heavyTailed.Add(PlaceOf(cow));

    /// <summary>Notes a calving, whether or not the farm tells of it.</summary>
    public void AddCalving(string cow, double day) => Days(_calvings, cow).Add(day);

    /// <summary>Adds what the farm knows.</summary>
    public void Know(CowEvent known)
    {
        if (known is FootTreated)
            Days(_treatments, known.Cow).Add(DayOf(known.At));
        _inputs.Add(new CowEventInput(known, FormattableString.Invariant($"e{_inputs.Count:0000000}")));
    }

    /// <summary>Adds a passage, when it is accepted.</summary>
    /// <param name="passage">As the platform sums it up.</param>
    /// <param name="tagOf">Whose tag was read.</param>
    /// <param name="cow">Whose it was.</param>
    /// <param name="sound">What the platform would have read of her were she sound and without scatter.</param>
    /// <param name="level">Her scatter over that of a usual cow.</param>
    public void Pass(DevicePassage passage, string tagOf, string cow, PerLeg<double> sound, double level)
    {
        var read = passage.ToPassage(Spec.Platform, new GaitOptions());
        if (!read.IsAccepted)
            return;
        _inputs.Add(new PassageInput(tagOf, read));
        var shares = read.Legs.Select(leg => leg.Share!.Value);
        Crossings.Add(new Crossing(
            PlaceOf(tagOf), DayOf(read.EndedAt), shares.Select(share => (float)share), Balances.FromShares(shares), Balances.FromShares(sound), (float)level, tagOf == cow));
    }

    /// <summary>Ends the adding: says which troubles count and hands out the inputs in the order of a history. They are not kept.</summary>
    public List<HerdInput> Close()
    {
        Crossings.Sort((a, b) => a.Day.CompareTo(b.Day));
        Judge();
        var inputs = _inputs.ToList();
        inputs.Sort(HerdInput.Order);
        _inputs.Clear();
        return inputs;
    }

    private void Judge()
    {
        var days = Crossings.GroupBy(c => c.Cow).ToDictionary(g => g.Key, g => g.Select(c => c.Day).ToList());
        var all = Troubles.ToArray();
        for (var i = 0; i < all.Length; i++)
        {
            var t = all[i];
            var judged = t.OnsetDay > LearningDays && t.OnsetDay < Spec.Days - MissDays
                && days.TryGetValue(t.Cow, out var crossed) && crossed.Exists(d => d < t.OnsetDay - 21)
                && crossed.Count(d => d > t.OnsetDay && d < t.OnsetDay + MissDays) >= 20
                && !all.Any(o => o != t && o.Cow == t.Cow && o.OnsetDay <= t.OnsetDay && o.HealedDay > t.OnsetDay);
            Troubles[i] = t with { IsJudged = judged };
        }

        var troubled = Troubles.ToLookup(t => t.Cow);
        CowWeeks = Crossings.Where(c => c.Day >= LearningDays).Select(c => (c.Cow, (int)(c.Day / 7))).Distinct().Count();
        SoundCrossings = Crossings.Count(c => c.Day >= LearningDays && !troubled[c.Cow].Any(t => t.IsOn(c.Day)));
    }

    private List<double> Days(Dictionary<int, List<double>> of, string cow) =>
        of.TryGetValue(PlaceOf(cow), out var days) ? days : of[PlaceOf(cow)] = [];
}
