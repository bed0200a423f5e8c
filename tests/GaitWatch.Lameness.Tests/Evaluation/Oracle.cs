using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.Evaluation;

/// <summary>
/// The yardstick: CUSUMs that know a cow's true mean at every passage, what moved everybody, her spreads and tails and the candidate directions, but neither the day's
/// realised effect nor the leg. Moustakides G.V. 1986 (Ann Stat 14:1379-1387): for a known step in independent data no rule has a smaller worst mean delay at that
/// false-alarm rate; for ramps and correlated days it is a yardstick, not a bound. It takes other cows' passages out, too.
/// </summary>
public static class Oracle
{
    /// <summary>The flags of a limit on the log likelihood ratio, shifted by how common a pattern is.</summary>
    public static List<Flag> FlagsOf(SimulatedHerd herd, double limit)
    {
        var spec = herd.Spec;
        var cows = new Dictionary<string, OneCow>();
        var flags = new List<Flag>();
        for (var i = 0; i < herd.Passages.Count; i++)
        {
            var (mean, level, isHers) = herd.Truth[i];
            if (!isHers)
                continue;
            var input = herd.Passages[i];
            if (!cows.TryGetValue(input.Cow, out var cow))
                cows.Add(input.Cow, cow = new OneCow(spec, level));
            var day = SimulatedHerd.DayOf(input.At);
            var value = GaitWatch.Lameness.Balances.FromShares(input.Passage.Legs.Select(l => l.Share!.Value));
            if (cow.Add(value.ToVector(), mean, day, limit) is { } pattern && day > cow.QuietUntil)
            {
                flags.Add(new Flag(input.Cow, pattern.Pattern, pattern.Leg, day));
                // While a flag is open there is no second one: as long as a trouble lasts here.
                cow.QuietUntil = herd.Episodes.Find(e => e.Cow == input.Cow && e.Explains(day)) is { } e ? e.HealingDay + 40 : day + 10;
            }
        }

        return flags;
    }

    /// <summary>The limit at which sound herds of a kind give the budget of false flags.</summary>
    public static double LimitFor(HerdSpec spec, double falsePer100CowWeeks)
    {
        var sound = new SimulatedHerd(spec with { EpisodesPer100CowYears = 0 });
        var (low, high) = (3.0, 14.0);
        for (var i = 0; i < 9; i++)
        {
            var middle = (low + high) / 2;
            if (DetectionTrial.Of(sound, FlagsOf(sound, middle)).FalsePer100CowWeeks > falsePer100CowWeeks)
                low = middle;
            else
                high = middle;
        }

        return (low + high) / 2;
    }

    private sealed class OneCow
    {
        private readonly HerdSpec _spec;
        private readonly Matrix3 _noise;
        private readonly Matrix3 _dayCov;
        private readonly Cusum[] _rules = new Cusum[CowEvidence.RuleCount];
        private BaselineFilter _filter;
        private int _day = -1;

        public OneCow(HerdSpec spec, double level)
        {
            _spec = spec;
            var noise = Math.Pow(level * spec.PassageDeviation, 2) * (spec.Tails - 2) / spec.Tails;
            var day = Math.Pow(level * spec.DayDeviation, 2);
            (_noise, _dayCov) = (Matrix3.Diagonal(noise, noise, noise), Matrix3.Diagonal(day, day, day));
            _filter = BaselineFilter.Unknown(Vector3.Zero, Matrix3.Zero, Matrix3.Zero, _dayCov);
        }

        public double QuietUntil { get; set; } = -1;

        public WatchedPattern? Add(Vector3 value, GaitWatch.Lameness.Balances mean, double at, double limit)
        {
            var day = (int)at;
            if (day != _day)
            {
                var kept = _day < 0 ? 0 : Math.Pow(_spec.DayKept, day - _day);
                _filter.NewDay(kept, _dayCov);
                for (var i = 0; i < _rules.Length; i++)
                    _rules[i].NewDay(kept);
                _day = day;
            }

            _filter.Mean = mean.ToVector();
            var surprise = value - _filter.Expected;
            var cov = _filter.ExpectedCov + _noise;
            var inverse = cov.Inverse();
            var distance = inverse.Quadratic(surprise);
            var weight = (_spec.Tails + 3) / (_spec.Tails + distance);
            var gains = _filter.Gains(cov + (((1 / weight) - 1) * _noise)) with { Mean = Matrix3.Zero, Wander = Matrix3.Zero };
            Span<Vector3> designs = stackalloc Vector3[CowEvidence.RuleCount];
            Designs.Fill(mean, designs);
            var (best, bestValue) = (-1, 0.0);
            for (var i = 0; i < _rules.Length; i++)
            {
                _rules[i].Add(surprise, distance, designs[i], inverse, _spec.Tails, gains, 0);
                var over = _rules[i].Value - limit - WatchedPattern.All[i / WatchedPattern.DesignsEach].LimitShift;
                if (over > bestValue)
                    (best, bestValue) = (i, over);
            }

            _filter.Learn(surprise, gains);
            if (best < 0)
                return null;
            Array.Clear(_rules);
            return WatchedPattern.All[best / WatchedPattern.DesignsEach];
        }
    }
}
