namespace GaitWatch.Simulator;

/// <summary>Makes a day's passages, as a platform that sums up itself would send them.</summary>
internal sealed class PassageMaker
{
    private static readonly double[] s_twice = [5.0, 16.5];
    private static readonly double[] s_thrice = [4.5, 12.5, 20.0];
    private readonly SimulatedHerd _herd;
    private readonly HerdSpec _spec;
    private readonly PlatformWeather _weather;
    private readonly SeededRandom[] _own;
    private readonly Scatter[] _wander;
    private readonly SeededRandom _barn;
    private int _next;

    public PassageMaker(SimulatedHerd herd, PlatformWeather weather)
    {
        (_herd, _spec, _weather) = (herd, herd.Spec, weather);
        _own = [.. herd.Cows.Select((_, i) => new SeededRandom(_spec.Seed, 2_000_000 + i))];
        _wander = [.. _own.Select(random => _spec.SlowWander * Scatter.Draw(random, false))];
        _barn = new(_spec.Seed, 40);
    }

    public void Make(int day, List<HerdEvent> today)
    {
        var milked = new List<int>();
        var dayEffect = new Scatter[_herd.Cows.Count];
        // Wanders back to her own within about six weeks.
        const double keep = 1 - 1 / 42.0;
        for (var i = 0; i < _herd.Cows.Count; i++)
        {
            var cow = _herd.Cows[i];
            if (!cow.IsPresentOn(day))
                continue;
            // Drawn for each cow on each of her days, milked or not, so that her numbers do not depend on her neighbours' fates.
            dayEffect[i] = Scatter.Draw(_own[i], false);
            _wander[i] = keep * _wander[i] + _spec.SlowWander * Math.Sqrt(1 - keep * keep) * Scatter.Draw(_own[i], false);
            if (cow.IsMilkedOn(day) && !cow.IsInHospitalOn(day))
                milked.Add(i);
        }

        var hours = _spec.MilkingsPerDay >= 3 ? s_thrice : s_twice;
        for (var milking = 0; milking < hours.Length; milking++)
        {
            // Each cow about her usual place, every seven to thirteen seconds or so one, in batches as the parlour lets them go.
            var order = milked.Select(i => (Cow: i, Place: _herd.Cows[i].Place + _barn.Normal(0, 0.12))).OrderBy(x => x.Place).Select(x => x.Cow).ToArray();
            var at = _herd.Midnight(day).AddHours(hours[milking]).AddSeconds(_barn.Uniform(0, 600));
            var passages = new List<PassageEvent>(order.Length);
            for (var k = 0; k < order.Length; k++)
            {
                at = at.AddSeconds(k % 12 == 0 ? _barn.Uniform(60, 420) : _barn.Uniform(7, 16));
                var passage = Passage(order[k], day, milking, at, dayEffect[order[k]]);
                if (_barn.Chance(_spec.LostPassages))
                    continue;
                passages.Add(passage);
            }

            Misread(passages);
            foreach (var passage in passages)
            {
                today.Add(passage);
                if (_barn.Chance(_spec.DoubledReads))
                    today.Add(passage with { ArrivesAt = passage.ArrivesAt.AddSeconds(_barn.Uniform(1, 600)) });
            }
        }
    }

    private PassageEvent Passage(int index, int day, int milking, DateTimeOffset at, Scatter dayEffect)
    {
        var cow = _herd.Cows[index];
        var random = _own[index];
        double udder = 0;
        if (_spec.Lactations)
        {
            // After milking some is left; now and then a cow was not milked out.
            var full = CowBody.MilkKgPerDay(cow.PeakMilkKg, cow.DaysInMilkOn(day)) / _spec.MilkingsPerDay;
            udder = full * (random.Chance(0.03) ? random.Uniform(0.5, 1) : random.Uniform(0.05, 0.2));
        }

        var (weight, shares) = _herd.StateAt(cow, at, udder);
        var level = _spec.NoiseScale * cow.NoiseLevel * _weather.NoiseOn(day) * BlockUnrest(cow, at);
        if (_spec.Lactations)
            level *= CowBody.CalfUnrest(cow.DaysToCalvingOn(day));
        var rho = _spec.WithinDayCorrelation;
        var own = Math.Sqrt(rho) * dayEffect + Math.Sqrt(1 - rho) * Scatter.Draw(random, cow.IsHeavyTailed);
        var steady = _wander[index] + new Scatter(_weather.ForeHindOn(day), 0, 0);
        var walked = (level * (own * Scatter.Usual) + steady).On(shares);
        var (left, right) = _weather.GainsOn(day);
        var sound = steady.On(_herd.SoundStateAt(cow, at, udder).Shares);
        sound = PerFoot.From(foot => sound[foot] * (foot.IsLeft() ? left : right));
        var told = sound.Lf + sound.Rf + sound.Lh + sound.Rh;
        // The weight on the scale: gut fill and the stride's luck, 1 %.
        var weighed = weight * (1 + random.Normal(0, 0.01, -0.04, 0.04));
        var load = PerFoot.From(foot => Math.Round(weighed * walked[foot] * (foot.IsLeft() ? left : right), 1));
        var started = Milliseconds(at);
        var ended = Milliseconds(at.AddSeconds(random.Uniform(2.6, 4.8)));
        return new(started, ended, FormattableString.Invariant($"px-{++_next:000000}"), cow.Eid, ended, load, cow.Number, shares)
        {
            SoundShares = sound.Select(share => share / told),
            ScatterLevel = level,
        };
    }

    private void Misread(List<PassageEvent> passages)
    {
        for (var i = 0; i < passages.Count; i++)
        {
            if (i + 1 < passages.Count && _barn.Chance(_spec.SwappedTags))
                (passages[i], passages[i + 1]) = (passages[i] with { Eid = passages[i + 1].Eid }, passages[i + 1] with { Eid = passages[i].Eid });
            if (_barn.Chance(_spec.MissedReads))
                passages[i] = passages[i] with { Eid = null };
            if (_barn.Chance(_spec.LateReads))
                passages[i] = passages[i] with { ArrivesAt = passages[i].ArrivesAt.AddMinutes(Math.Pow(10, _barn.Uniform(0, 3.5))) };
        }
    }

    /// <summary>For five days after a block goes on, and three after it comes off, she walks less evenly (figures invented).</summary>
    private static double BlockUnrest(SimulatedCow cow, DateTimeOffset at)
    {
        foreach (var finding in cow.Findings)
        {
            var days = (at - finding.At).TotalDays;
            if ((days is >= 0 and < 5 && finding.Finding.Actions.Contains("block")) || (days is >= 0 and < 3 && finding.Finding.Actions.Contains("block-off")))
                return 1.3;
        }

        return 1;
    }

    private static DateTimeOffset Milliseconds(DateTimeOffset at) => new(at.Ticks - at.Ticks % TimeSpan.TicksPerMillisecond, TimeSpan.Zero);
}
