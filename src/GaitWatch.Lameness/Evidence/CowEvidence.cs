namespace GaitWatch.Lameness;

/// <summary>One cow's baseline and the evidence against it: one CUSUM for each pattern and design.</summary>
internal sealed class CowEvidence
{
    /// <summary>Number of CUSUMs.</summary>
    public static readonly int RuleCount = WatchedPattern.All.Length * WatchedPattern.DesignsEach;

    /// <summary>Passages of her own before she is watched.</summary>
    private const long LearningPassages = 8;

    /// <summary>
    /// Days in which a change is thought to grow to its designed size: days for a sore that bursts, weeks for an ulcer (common practice, no source). Measured on simulated
    /// herds' development seeds: 0.08 of the ratio to the oracle, against none; 8 and 12 days do nearly as well.
    /// </summary>
    private const double RiseDays = 10;

    /// <summary>After a longer silence evidence starts anew.</summary>
    private static readonly long _longSilence = TimeSpan.FromDays(21).Ticks;

    /// <summary>What is told within so long is one event.</summary>
    private static readonly long _sameEvent = TimeSpan.FromHours(12).Ticks;

    private Numbers _n;
    private readonly Cusum[] _rules = new Cusum[RuleCount];

    /// <summary>The plain values, in one piece so that they copy and save as one.</summary>
    private struct Numbers
    {
        public BaselineFilter Filter;
        public CowNoise Noise;
        public long Day;
        public long Ticks;
        public long Passages;
        public Matrix3 ExtraDrift;
        public long ExtraDriftUntil;
        public long HoldUntil;
        public long LoosenedTicks;
        public Matrix3 Loosened;
    }

    /// <summary>A cow first seen.</summary>
    public CowEvidence(HerdModel herd) => _n = new Numbers
    {
        Filter = BaselineFilter.Unknown(herd.Spread.Mean, herd.Spread.Cov, herd.Noise.Wander, herd.Noise.Day),
        Noise = CowNoise.Unknown(herd.TailsPrior),
        Day = long.MinValue,
    };

    /// <summary>Of nobody yet: to be made equal to another.</summary>
    public CowEvidence()
    {
    }

    /// <summary>Her baseline.</summary>
    public ref BaselineFilter Filter => ref _n.Filter;

    /// <summary>The CUSUMs, pattern by pattern, design by design.</summary>
    public ReadOnlySpan<Cusum> Rules => _rules;

    /// <summary>Passages learnt from.</summary>
    public long Passages => _n.Passages;

    /// <summary>How noisy she is, and how heavy her tails.</summary>
    public ref readonly CowNoise Noise => ref _n.Noise;

    /// <summary>Whether she is known well enough to be watched.</summary>
    public bool IsLearnt => _n.Passages >= LearningPassages;

    /// <summary>Whether a known event forbids evidence at a time.</summary>
    public bool IsHeld(long ticks) => ticks < _n.HoldUntil;

    /// <summary>Makes this one equal to another.</summary>
    public void CopyFrom(CowEvidence other)
    {
        _n = other._n;
        other._rules.CopyTo(_rules, 0);
    }

    /// <summary>Brings the baseline to the time of a passage.</summary>
    public void Advance(HerdModel herd, long ticks, long day)
    {
        if (_n.Day == long.MinValue)
            (_n.Day, _n.Ticks) = (day, ticks);
        var days = Math.Max(0, ticks - _n.Ticks) / (double)TimeSpan.TicksPerDay;
        _n.Filter.Drift(days * herd.Noise.Drift);
        Roam(herd, days);
        var boosted = Math.Max(0, Math.Min(ticks, _n.ExtraDriftUntil) - _n.Ticks) / (double)TimeSpan.TicksPerDay;
        if (boosted > 0)
            _n.Filter.Drift(boosted * _n.ExtraDrift);
        if (ticks - _n.Ticks > _longSilence)
            ResetRules();
        if (day != _n.Day)
        {
            var kept = Math.Pow(herd.Noise.Kept, Math.Max(1, day - _n.Day));
            _n.Filter.NewDay(kept, _n.Noise.Level * herd.Noise.Day);
            for (var i = 0; i < _rules.Length; i++)
                _rules[i].NewDay(kept);
            _n.Day = day;
        }

        _n.Ticks = ticks;
    }

    private void Roam(HerdModel herd, double days)
    {
        if (days <= 0)
            return;
        var kept = Math.Exp(-days / HerdNoise.WanderDays);
        _n.Filter.Roam(kept, herd.Noise.Wander);
        for (var i = 0; i < _rules.Length; i++)
            _rules[i].Roam(kept);
    }

    /// <summary>Compares a passage with what is expected; <see cref="Advance"/> first.</summary>
    public Surprise Compare(HerdModel herd, in Reading reading, in Session common)
    {
        var expected = _n.Filter.Expected + common.Movement;
        var surprise = reading.Value - expected;
        var noise = (_n.Noise.Level * ((common.Unrest * herd.Noise.Passage) + (Math.Max(common.Unrest - 1, 0) * herd.Noise.Day))) + reading.ExtraError;
        var cov = _n.Filter.ExpectedCov + common.MovementCov + noise;
        var inverse = cov.Inverse();
        return new Surprise(expected, surprise, cov, noise, inverse, inverse.Quadratic(surprise));
    }

    /// <summary>Learns from a passage and adds it to the evidence.</summary>
    /// <param name="herd">The herd.</param>
    /// <param name="s">The passage against what was expected.</param>
    /// <param name="ticks">When.</param>
    /// <param name="designs">Each rule's designed change for her, balances.</param>
    /// <param name="frozen">Whether an alert is open: then her noise level is not touched.</param>
    /// <param name="sizes">Each rule's change in standard deviations; NaN where no evidence was taken.</param>
    public void Take(HerdModel herd, in Surprise s, long ticks, ReadOnlySpan<Vector3> designs, bool frozen, Span<double> sizes)
    {
        var dof = _n.Noise.Dof;
        var weight = (dof + 3) / (dof + s.Distance);
        var gains = _n.Filter.Gains(s.Cov + (((1 / weight) - 1) * s.Noise));
        if (IsLearnt && herd.IsLearnt && !IsHeld(ticks))
        {
            for (var i = 0; i < _rules.Length; i++)
                sizes[i] = _rules[i].Add(s.Value, s.Distance, designs[i], s.Inverse, dof, gains, ticks, RiseDays);
        }
        else
        {
            sizes.Fill(double.NaN);
        }

        _n.Filter.Learn(s.Value, gains);
        _n.Passages++;
        if (frozen || _n.Passages <= LearningPassages)
            return;
        _n.Noise.Add(s.Distance, herd.TailsPrior);
    }

    /// <summary>Forgets the evidence, not the baseline.</summary>
    public void ResetRules() => Array.Clear(_rules);

    /// <summary>A known event: the baseline becomes less certain, drifts faster for a while, and evidence starts anew, later where asked.</summary>
    /// <param name="cov">Added to the uncertainty of the mean.</param>
    /// <param name="extraDrift">Added to the drift, a day.</param>
    /// <param name="driftUntil">Until when, UTC ticks.</param>
    /// <param name="holdUntil">No evidence before, UTC ticks.</param>
    public void Loosen(Matrix3 cov, Matrix3 extraDrift, long driftUntil, long holdUntil)
    {
        // Four feet trimmed on one morning are one event for her gait, in whatever many entries it is told.
        var again = _n.LoosenedTicks > 0 && _n.Ticks - _n.LoosenedTicks < _sameEvent;
        _n.Filter.MeanCov += again ? Matrix3.Excess(cov, _n.Loosened) : cov;
        _n.Loosened = again ? Matrix3.Larger(cov, _n.Loosened) : cov;
        _n.ExtraDrift = driftUntil > 0 && _n.ExtraDriftUntil > _n.Ticks
            ? again ? Matrix3.Larger(extraDrift, _n.ExtraDrift) : _n.ExtraDrift + extraDrift
            : extraDrift;
        _n.ExtraDriftUntil = Math.Max(_n.ExtraDriftUntil, driftUntil);
        _n.LoosenedTicks = _n.Ticks;
        _n.HoldUntil = Math.Max(_n.HoldUntil, holdUntil);
        ResetRules();
    }

    /// <summary>Follows a trouble: the mean is set to where it now is and drifts along the trouble's direction until told otherwise.</summary>
    public void Track(Matrix3 drift, long until) => (_n.ExtraDrift, _n.ExtraDriftUntil) = (drift, until);

    public void Save(BinaryWriter writer)
    {
        writer.Put(_n);
        foreach (var rule in _rules)
            writer.Put(rule);
    }

    public static CowEvidence Load(BinaryReader reader)
    {
        var e = new CowEvidence { _n = reader.Take<Numbers>() };
        for (var i = 0; i < e._rules.Length; i++)
            e._rules[i] = reader.Take<Cusum>();
        return e;
    }
}
