using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

// What her open alerts go through: raised, followed, closed, looked at.
internal sealed partial class CowWatch
{
    /// <summary>The most a trouble's level is thought to move in a day, balances squared per designed change squared.</summary>
    private const double TrackPerDay = 0.12 * 0.12;

    /// <summary>The same once it is shown to be over: she is normal, and may still ease a little.</summary>
    private const double EasingPerDay = 0.03 * 0.03;

    /// <summary>For so long after an alert closed she is followed faster along the way that leg moved: healing is not another leg's failing.</summary>
    private static readonly TimeSpan _easing = TimeSpan.FromDays(14);
    private static readonly TimeSpan _healingTreated = TimeSpan.FromDays(45);

    /// <summary>For so long after a treatment, or the close of an alert, a leg may be easing: half of what the slowest treated feet lose goes within half of it.</summary>
    private static readonly TimeSpan _mayEase = TimeSpan.FromDays(90);

    private static readonly TimeSpan _repeats = TimeSpan.FromDays(30);

    private void LookAtTroubles(
        DateTimeOffset at, Vector3 value, in Matrix3 noise, HerdModel herd, LamenessOptions options, ImmutableArray<AlertChange>.Builder changes)
    {
        // A day's mood is one however often she crosses in it.
        var spread = noise + (Math.Max(herd.PassagesPerWeek / 7, 1) * _present.Noise.Level * herd.Noise.Day);
        for (var i = _troubles.Count - 1; i >= 0; i--)
        {
            var trouble = _troubles[i];
            var wasExamined = trouble.Alert.State == AlertState.Examined;
            trouble.Take(value, spread, at);
            // They stand in the order in which they were raised.
            var isLifted = trouble.Alert.Pattern == AlertPattern.OneLeg
                && _troubles.FindIndex(i + 1, later => later.Alert.Pattern == AlertPattern.OneLeg && later.Alert.Leg != trouble.Alert.Leg) >= 0;
            if (trouble.Look(_present.Filter, at, isLifted, options.TimeZone) is not { } change)
                continue;
            changes.Add(change);
            if (change.Kind != AlertChangeKind.Closed)
                continue;
            if (!wasExamined && at - trouble.Alert.RaisedAt < AlarmLimits.SoonOver(herd.PassagesPerWeek))
                CountFalse(herd, trouble.Alert.RaisedAt);
            _present.Filter.Return(trouble.Normal, trouble.NormalCov + ((at - trouble.Alert.OnsetAt).TotalDays * herd.Noise.Drift), herd.Noise.Wander);
            EndTrouble(i, at, _present, EasingPerDay, _easing);
        }
    }

    /// <summary>Tells the herd of an alert that turned out to be false; a cow's second within a month is a repeat, which the budget does not count.</summary>
    private void CountFalse(HerdModel herd, DateTimeOffset raisedAt)
    {
        if (raisedAt.UtcTicks - _lastFalse >= _repeats.Ticks)
            herd.Limits.CountFalse();
        _lastFalse = raisedAt.UtcTicks;
    }

    private AlertChange Raise(int ruleIndex, in Surprise surprise, Vector3 value, DateTimeOffset at, HerdModel herd, LamenessOptions options)
    {
        var pattern = WatchedPattern.All[ruleIndex / WatchedPattern.DesignsEach];
        var rule = _present.Rules[ruleIndex];
        ref var filter = ref _present.Filter;
        // As the change stands by now; what the baseline took on of it goes with what it will have grown to.
        var size = Math.Clamp(rule.Grown * rule.Size, 0.3, 5);
        var full = size / Math.Max(rule.Grown, 0.1);
        Span<Vector3> designs = stackalloc Vector3[CowEvidence.RuleCount];
        filter.Mean -= full * rule.MeanBias;
        filter.Wander -= full * rule.WanderBias;
        filter.Day -= full * rule.DayBias;
        var normal = filter.Level;
        Designs.Fill(Balances.FromVector(normal), designs);
        var design = designs[ruleIndex];
        var normalCov = filter.LevelCov;
        filter.Mean += size * design;
        var sizeVariance = (rule.Grown * rule.Grown / Math.Max(rule.Information, 1)) + (0.3 * size * 0.3 * size);
        filter.MeanCov += sizeVariance * Matrix3.Outer(design, design);

        var leg = pattern.Leg;
        var cov = normalCov + filter.LevelCov;
        var probability = Verdict.LegProbability(_present);
        // Of a pair the worse: by each leg's own evidence, and where that says nothing, by the newest passage.
        var apart = leg.IsFore() ? surprise.Value.Y : surprise.Value.Z;
        if (pattern.Pattern != AlertPattern.OneLeg
            && (probability[leg.Opposite()] > probability[leg] + 0.01 || (probability[leg.Opposite()] > probability[leg] - 0.01 && apart > 0)))
        {
            leg = leg.Opposite();
        }

        var drop = LoadDrop.Between(normal, filter.Level, cov, leg);
        var (onset, earliest, latest) = Onset(rule, value, normal, design, at, herd, options);
        var alert = new Alert
        {
            Id = AlertId.Of(Name, pattern.Pattern, leg, at),
            Cow = Name,
            Pattern = pattern.Pattern,
            Leg = leg,
            LegProbability = probability,
            RaisedAt = at,
            OnsetAt = onset,
            OnsetEarliestAt = earliest,
            OnsetLatestAt = latest,
            LoadDropPercent = drop.Percent,
            LoadDropLowerPercent = drop.Lower,
            LoadDropUpperPercent = drop.Upper,
            Urgency = UrgencyRule.Of(drop.Percent, (at - onset).TotalDays),
            State = AlertState.Open,
            Explanation = "",
        };
        alert = alert with { Explanation = AlertText.Of(alert, drop, options.TimeZone) };
        _troubles.Add(new Trouble(alert, normal, normalCov, design));
        _peak = 0;
        _present.ResetRules();
        Follow(_present, at);
        Freeze();
        return new AlertChange(at, AlertChangeKind.Raised, alert);
    }

    /// <summary>When it began, earliest and latest: by her last days, or where they tell nothing by the evidence's last zero.</summary>
    private (DateTimeOffset At, DateTimeOffset? Earliest, DateTimeOffset? Latest) Onset(
        in Cusum rule, Vector3 value, Vector3 normal, Vector3 design, DateTimeOffset at, HerdModel herd, LamenessOptions options)
    {
        var now = TimeZoneInfo.ConvertTime(at, options.TimeZone).Ticks / (double)TimeSpan.TicksPerDay;
        return OnsetEstimate.Of(_history.MeansWith(value, herd.Day), now, normal, design, herd.Noise, _present.Noise) is { } estimate
            ? (Instant(estimate.Day), Instant(estimate.Earliest), Instant(estimate.Latest))
            : (new DateTimeOffset(rule.OnsetTicks, TimeSpan.Zero), null, null);

        // To the millisecond, as instants are told.
        DateTimeOffset Instant(double day) => at.AddMilliseconds(Math.Round(Math.Min(day - now, 0) * TimeSpan.MillisecondsPerDay)).ToUniversalTime();
    }

    /// <summary>What is present is settled: a raised alert is not taken back by a better look at its last session.</summary>
    private void Freeze()
    {
        _settled.CopyFrom(_present);
        _pending = null;
        _history.Clear();
    }

    private void EndTrouble(int index, DateTimeOffset at, CowEvidence evidence, double driftPerDay, TimeSpan driftFor, bool wasTrue = true)
    {
        var design = _troubles[index].Design;
        if (wasTrue && _troubles[index].Alert.Pattern == AlertPattern.OneLeg)
            MayEase(_troubles[index].Alert.Leg, at);
        _troubles.RemoveAt(index);
        evidence.ResetRules();
        if (_troubles.Count > 0)
            Follow(evidence, at);
        else
            evidence.Track(driftPerDay * Matrix3.Outer(design, design), (at + driftFor).UtcTicks);
        if (evidence == _present)
            Freeze();
        _history.Clear();
    }

    private void MayEase(Leg leg, DateTimeOffset at) => (_eased, _easedUntil) = (leg, (at + _mayEase).UtcTicks);

    /// <summary>The leg that may be easing: of an open alert, or one lately closed or treated.</summary>
    private Leg? EasedAt(long ticks) => _troubles.Find(t => t.Alert.Pattern == AlertPattern.OneLeg)?.Alert.Leg ?? (ticks < _easedUntil ? _eased : null);

    private void Follow(CowEvidence evidence, DateTimeOffset at)
    {
        var drift = Matrix3.Zero;
        foreach (var trouble in _troubles)
            drift += TrackPerDay * Matrix3.Outer(trouble.Design, trouble.Design);
        evidence.Track(drift, (at + TimeSpan.FromDays(3650)).UtcTicks);
    }

    private void CloseByHand(AlertClosedByHand closed, HerdModel herd, LamenessOptions options, ImmutableArray<AlertChange>.Builder changes)
    {
        var index = _troubles.FindIndex(t => t.Alert.Pattern == closed.Pattern && t.Alert.Leg == closed.Leg);
        if (index < 0)
            return;
        var trouble = _troubles[index];
        var drop = trouble.DropOf(_settled.Filter);
        changes.Add(trouble.Close(closed.At, closed.Reason, drop, options.TimeZone));
        if (closed.Reason is AlertCloseReason.LiftedNothingFound or AlertCloseReason.SeenWalkingSound or AlertCloseReason.WrongCow)
            CountFalse(herd, trouble.Alert.RaisedAt);
        if (closed.Reason == AlertCloseReason.TreatedByFarm)
        {
            EndTrouble(index, closed.At, _settled, TrackPerDay, _healingTreated);
            return;
        }

        // She is sound as she stands, a person says: where she stands is her normal, give or take half of what was thought a drop.
        var moved = _settled.Filter.Level - trouble.Normal;
        EndTrouble(index, closed.At, _settled, EasingPerDay, _easing, wasTrue: false);
        _settled.Filter.MeanCov += 0.25 * Matrix3.Outer(moved, moved);
    }

    private void Examine(FootTreated treated, LamenessOptions options, ImmutableArray<AlertChange>.Builder changes)
    {
        if (treated.Foot is { } own)
            MayEase(own, treated.At);
        foreach (var trouble in _troubles)
        {
            var isIts = treated.Foot is not { } foot || foot == trouble.Alert.Leg
                || (trouble.Alert.Pattern != AlertPattern.OneLeg && foot == trouble.Alert.Leg.Opposite());
            if (isIts && trouble.Examine(_settled.Filter, treated.At, options.TimeZone) is { } change)
                changes.Add(change);
        }

        if (_troubles.Count > 0)
            Follow(_settled, treated.At);
    }
}
