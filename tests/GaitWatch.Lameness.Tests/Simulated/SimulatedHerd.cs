using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests.Simulated;

/// <summary>
/// A herd's history in balances, drawn from a seed: cows of their own load distribution, days and passages that scatter, drift, floors, tags of
/// the wrong cow, platform faults, troubles that ramp up and heal. It knows nothing of how detection works.
/// </summary>
public sealed class SimulatedHerd
{
    public static DateTimeOffset Start { get; } = new(2025, 1, 1, 0, 0, 0, TimeSpan.Zero);
    private readonly Random _random;

    public SimulatedHerd(HerdSpec spec)
    {
        Spec = spec;
        _random = new Random(spec.Seed);
        Draw();
    }

    public HerdSpec Spec { get; }

    public List<PassageInput> Passages { get; } = [];

    public List<Episode> Episodes { get; } = [];

    /// <summary>For each passage, in order: what the cow's own sound mean and the common movement truly were, her noise level, and whether it is hers.</summary>
    public List<(Balances Mean, double NoiseLevel, bool IsHers)> Truth { get; } = [];

    /// <summary>Day of an instant, from the history's first.</summary>
    public static double DayOf(DateTimeOffset at) => (at - Start).TotalDays;

    private void Draw()
    {
        var cows = Enumerable.Range(0, Spec.Cows).Select(i => new Cow(this, i)).ToArray();
        foreach (var cow in cows)
            DrawEpisodes(cow);
        Episodes.AddRange(Spec.Given);
        var drift = 0.0;
        for (var day = 0; day < Spec.Days; day++)
        {
            drift += Spec.PlatformDriftPerDay;
            foreach (var cow in cows)
                cow.NewDay(this);
            for (var milking = 0; milking < 3; milking++)
            {
                var session = new Balances(Gauss(Spec.SessionDeviation), Gauss(Spec.SessionDeviation), Gauss(Spec.SessionDeviation) + drift);
                if (Array.Exists(Spec.FaultDays, f => day >= f && day < f + 2))
                    session += new Balances(0.05, 0.10, -0.12);
                Cross(cows, day, (milking * 8) + 4, session);
            }
        }
    }

    private void Cross(Cow[] cows, int day, double hour, Balances session)
    {
        var order = cows.Where(_ => _random.NextDouble() < Spec.CrossingChance).OrderBy(_ => _random.Next()).ToArray();
        var at = Start.AddDays(day).AddHours(hour);
        for (var i = 0; i < order.Length; i++)
        {
            at = at.AddSeconds(20 + (20 * _random.NextDouble()));
            var walker = order[i];
            var named = _random.NextDouble() < Spec.SwappedTags && order.Length > 1 ? order[(i + 1) % order.Length] : walker;
            var mean = walker.Mean + session;
            var shares = mean.ToShares();
            foreach (var episode in Episodes.Where(e => e.Cow == walker.Name))
                shares = Spare(shares, episode, episode.At(DayOf(at)));
            var noise = walker.Noise(this);
            var measured = (Balances.FromShares(shares) + walker.Day + noise).ToShares();
            var weight = walker.WeightKg * (1 + Gauss(0.012));
            Passages.Add(new PassageInput(named.Name, new Passage
            {
                Id = $"exit.{Passages.Count:000000}",
                Platform = "exit",
                StartedAt = at.AddSeconds(-4),
                EndedAt = at,
                WeightKg = weight,
                Legs = measured.Select(share => new LegLoad(share * weight, share, null, null, null, 1)),
            }));
            Truth.Add((mean, walker.NoiseLevel, named == walker));
        }
    }

    private static PerLeg<double> Spare(PerLeg<double> shares, Episode e, double fraction)
    {
        if (e.Pattern != AlertPattern.OneLeg)
        {
            var fore = e.Pattern == AlertPattern.BothFore;
            var sum = fore ? shares.Lf + shares.Rf : shares.Lh + shares.Rh;
            return PerLeg.From(l => l.IsFore() == fore ? shares[l] * (1 - fraction) : shares[l] + (sum * fraction / 2));
        }

        var given = shares[e.Leg] * fraction;
        return PerLeg.From(l => l == e.Leg ? shares[l] - given
            : l == e.Leg.Opposite() ? shares[l] + (given * e.ToOpposite)
            : shares[l] + (given * (1 - e.ToOpposite) / 2));
    }

    private void DrawEpisodes(Cow cow)
    {
        var day = (double)Spec.FirstEpisodeDay;
        while (Spec.EpisodesPer100CowYears > 0)
        {
            day += -Math.Log(1 - _random.NextDouble()) * 36500 / Spec.EpisodesPer100CowYears;
            if (day > Spec.Days - 30)
                return;
            var kind = _random.NextDouble();
            var pattern = kind < 0.06 ? AlertPattern.BothHind : AlertPattern.OneLeg;
            var left = _random.NextDouble() < 0.5;
            var leg = _random.NextDouble() < 0.8 || pattern == AlertPattern.BothHind ? (left ? Leg.Lh : Leg.Rh) : (left ? Leg.Lf : Leg.Rf);
            var drop = 0.05 + (0.25 * Math.Pow(_random.NextDouble(), 1.5));
            if (pattern == AlertPattern.BothHind)
                drop *= 0.6;
            Episodes.Add(new Episode(
                cow.Name, pattern, leg, day, 0.5 + (7 * _random.NextDouble()), drop, 0.6 + (0.3 * _random.NextDouble()), day + 30));
            day += 120;
        }
    }

    private double Gauss(double deviation)
    {
        var r = Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble()));
        return deviation * r * Math.Cos(2 * Math.PI * _random.NextDouble());
    }

    private sealed class Cow
    {
        private readonly double _trend;

        public Cow(SimulatedHerd herd, int index)
        {
            var s = herd.Spec;
            Name = $"{index + 1}";
            Mean = new Balances(0.2 + herd.Gauss(s.ForeHindSpread), herd.Gauss(s.SideSpread), herd.Gauss(s.SideSpread));
            NoiseLevel = Math.Exp(herd.Gauss(s.NoiseLevelDeviation));
            WeightKg = 650 * Math.Exp(herd.Gauss(0.09));
            _trend = herd.Gauss(0.0002);
        }

        public string Name { get; }

        public Balances Mean { get; private set; }

        public Balances Day { get; private set; }

        /// <summary>Factor on the herd's standard deviations.</summary>
        public double NoiseLevel { get; }

        public double WeightKg { get; private set; }

        public void NewDay(SimulatedHerd herd)
        {
            var s = herd.Spec;
            var walk = s.DriftDeviation;
            Mean += new Balances(herd.Gauss(walk) + _trend, herd.Gauss(walk), herd.Gauss(walk));
            var fresh = Math.Sqrt(1 - (s.DayKept * s.DayKept)) * s.DayDeviation * NoiseLevel;
            Day = new Balances(
                (s.DayKept * Day.ForeHind) + herd.Gauss(fresh), (s.DayKept * Day.Fore) + herd.Gauss(fresh), (s.DayKept * Day.Hind) + herd.Gauss(fresh));
            WeightKg *= 1 + herd.Gauss(0.002);
        }

        public Balances Noise(SimulatedHerd herd)
        {
            var dof = herd.Spec.Tails;
            var chi = 0.0;
            for (var i = 0; i < (int)dof; i++)
                chi += Math.Pow(herd.Gauss(1), 2);
            // t with unit variance, so that tails are compared at the same spread.
            var scale = NoiseLevel * herd.Spec.PassageDeviation * Math.Sqrt((dof - 2) / chi);
            return new Balances(herd.Gauss(scale), herd.Gauss(scale), herd.Gauss(scale));
        }
    }
}
