using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>
/// The yardstick: CUSUMs of the log likelihood ratio that are told at every crossing the cow's true sound mean (drift, platform, floor and udder included), her spreads and
/// tails, whose crossing it is and how troubles divide over the legs, but neither the day's realised effect nor the leg nor the moment. It learns nothing.
/// </summary>
/// <remarks>
/// Page E.S. 1954, Biometrika 41:100-115; Moustakides G.V. 1986, Ann Stat 14:1379-1387: for a known step in independent data no rule has a smaller worst mean delay at that
/// false-alarm rate; for ramps and correlated days it is a yardstick, not a bound. Balances are taken as independent of each other, as the simulator draws them.
/// </remarks>
internal sealed class Oracle
{
    /// <summary>Designed drops of one leg, and half of each for a pair.</summary>
    private static readonly double[] _designs = [0.06, 0.11, 0.20];

    /// <summary>Degrees of freedom under which a heavy-tailed cow's three independent t (4) balances, day effect included, are weighed.</summary>
    private const double HeavyDof = 5;

    private static readonly double _rootHalf = Math.Sqrt(0.5);
    private readonly HerdHistory _history;
    private readonly double[] _shift;
    private readonly Step[] _steps;

    /// <summary>Prepares a history: each crossing's log likelihood ratios do not depend on a limit.</summary>
    public Oracle(HerdHistory history)
    {
        _history = history;
        var spec = history.Spec;
        double[] prior =
        [
            (1 - spec.HindCases) / 2, (1 - spec.HindCases) / 2,
            spec.HindCases * (1 - spec.BothHindCases) / 2, spec.HindCases * (1 - spec.BothHindCases) / 2, spec.HindCases * spec.BothHindCases,
        ];
        _shift = [.. prior.Select(p => -Math.Log(p * prior.Length))];
        _steps = [.. history.Crossings.Where(c => c.IsHers).Select(c => new Step(c))];
    }

    /// <summary>The flags of a limit.</summary>
    public List<Flag> Run(double limit)
    {
        var cows = new Dictionary<int, OneCow>();
        var flags = new List<Flag>();
        var troubles = _history.Troubles.ToLookup(t => t.Cow);
        foreach (var step in _steps)
        {
            var crossing = step.Crossing;
            if (!cows.TryGetValue(crossing.Cow, out var cow))
                cows.Add(crossing.Cow, cow = new OneCow(_history.Spec.WithinDayCorrelation, _history.IsHeavyTailed(crossing.Cow)));
            if (cow.Add(step, limit, _shift) is not { } pattern)
                continue;
            // While a trouble that it has told of lasts it is silent, as an open alert is.
            if (crossing.Day < cow.QuietUntil)
                continue;
            var leg = (Leg)Math.Min(pattern, 3);
            flags.Add(new Flag(crossing.Cow, pattern < 4 ? AlertPattern.OneLeg : AlertPattern.BothHind, leg, crossing.Day));
            cow.QuietUntil = troubles[crossing.Cow].FirstOrDefault(t => t.IsOn(crossing.Day) && t.IsSore(leg))?.HealedDay ?? -1;
        }

        return flags;
    }

    /// <summary>A crossing with the changes that each pattern and design would make of it.</summary>
    private sealed class Step
    {
        public Step(in Crossing crossing)
        {
            Crossing = crossing;
            var normal = crossing.Sound;
            var sound = normal.ToShares();
            var shares = new PerFoot<double>(sound.Lf, sound.Rf, sound.Lh, sound.Rh);
            Changes = new Balances[5 * _designs.Length];
            for (var d = 0; d < _designs.Length; d++)
            {
                for (var foot = 0; foot < 4; foot++)
                    Changes[(foot * _designs.Length) + d] = Of(shares.Sore((Foot)foot, _designs[d]));
                var half = _designs[d] / 2;
                var lost = half * (shares.Lh + shares.Rh);
                var fore = 1 + (lost / (shares.Lf + shares.Rf));
                Changes[(4 * _designs.Length) + d] = Of(new PerFoot<double>(shares.Lf * fore, shares.Rf * fore, shares.Lh * (1 - half), shares.Rh * (1 - half)));
            }

            Balances Of(PerFoot<double> s) => Balances.FromShares(new PerLeg<double>(s.Lf, s.Rf, s.Lh, s.Rh)) - normal;
        }

        public Crossing Crossing { get; }

        public Balances[] Changes { get; }
    }

    private sealed class OneCow(double withinDay, bool isHeavy)
    {
        // Per balance: fore-hind, fore, hind.
        private readonly double[] _day = new double[3];
        private readonly double[] _dayVariance = new double[3];
        private readonly double[] _value = new double[5 * _designs.Length];
        private readonly double[,] _bias = new double[5 * _designs.Length, 3];
        private int _today = -1;

        public double QuietUntil { get; set; } = -1;

        public int? Add(Step step, double limit, double[] shift)
        {
            var crossing = step.Crossing;
            // Standard deviations in balances: the simulator's are of log ratios of left over right.
            Span<double> spread =
                [crossing.Level * Scatter.Usual.ForeHind, crossing.Level * Scatter.Usual.Fore * _rootHalf, crossing.Level * Scatter.Usual.Hind * _rootHalf];
            if ((int)crossing.Day != _today)
            {
                _today = (int)crossing.Day;
                for (var b = 0; b < 3; b++)
                    (_day[b], _dayVariance[b]) = (0, withinDay * spread[b] * spread[b]);
                Array.Clear(_bias);
            }

            var apart = crossing.Seen - crossing.Sound;
            Span<double> surprise = [apart.ForeHind - _day[0], apart.Fore - _day[1], apart.Hind - _day[2]];
            Span<double> inverse = stackalloc double[3];
            Span<double> gain = stackalloc double[3];
            var distance = 0.0;
            var scale = isHeavy ? (HeavyDof - 2) / HeavyDof : 1;
            for (var b = 0; b < 3; b++)
            {
                inverse[b] = 1 / (scale * (_dayVariance[b] + ((1 - withinDay) * spread[b] * spread[b])));
                distance += surprise[b] * surprise[b] * inverse[b];
            }

            // What lies far out says little of the day.
            var weight = isHeavy ? (HeavyDof + 3) / (HeavyDof + distance) : 1;
            for (var b = 0; b < 3; b++)
                gain[b] = _dayVariance[b] / (_dayVariance[b] + ((1 - withinDay) * spread[b] * spread[b] * scale / weight));
            var (best, over) = (-1, 0.0);
            for (var i = 0; i < _value.Length; i++)
            {
                var change = step.Changes[i];
                Span<double> left = [change.ForeHind - _bias[i, 0], change.Fore - _bias[i, 1], change.Hind - _bias[i, 2]];
                var (along, size) = (0.0, 0.0);
                for (var b = 0; b < 3; b++)
                {
                    along += surprise[b] * inverse[b] * left[b];
                    size += left[b] * inverse[b] * left[b];
                    _bias[i, b] += gain[b] * left[b];
                }

                var moved = Math.Max(distance - (2 * along) + size, 0);
                _value[i] += isHeavy ? (HeavyDof + 3) / 2 * Math.Log((HeavyDof + distance) / (HeavyDof + moved)) : along - (size / 2);
                if (_value[i] <= 0)
                {
                    _value[i] = 0;
                    for (var b = 0; b < 3; b++)
                        _bias[i, b] = 0;
                }

                if (_value[i] - limit - shift[i / _designs.Length] > over)
                    (best, over) = (i, _value[i] - limit - shift[i / _designs.Length]);
            }

            for (var b = 0; b < 3; b++)
            {
                _day[b] += gain[b] * surprise[b];
                _dayVariance[b] *= 1 - gain[b];
            }

            if (best < 0)
                return null;
            Array.Clear(_value);
            Array.Clear(_bias);
            return best / _designs.Length;
        }
    }
}
