using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>All that is kept of one cow, and what her passages and events do to it.</summary>
/// <remarks>
/// Her newest passage is judged at once by what is known, and once more when the next one comes: by then the whole of its session has
/// crossed, and it is known better what moved everybody. So there are two evidences: settled without the newest passage, which is kept, and present with
/// it, which is made of the settled at each passage, in one place for all cows.
/// </remarks>
internal sealed partial class CowWatch
{
    /// <summary>A single passage may raise an alert only when so many others of its session vouch for the platform.</summary>
    private const int Vouchers = 8;

    private readonly CowEvidence _settled;
    private readonly CowEvidence _present;
    private readonly List<Trouble> _troubles = [];
    private DayHistory _history = new();
    private Identity _identity;
    private Pending? _pending;
    private readonly Vector3[] _designs = new Vector3[CowEvidence.RuleCount];
    private Vector3 _designedAt;
    private long _designDay = -1;
    private long _week = -1;
    private double _peak;
    private long _lastFalse;
    private Leg _eased;
    private long _easedUntil;

    public CowWatch(string name, HerdModel herd)
    {
        Name = name;
        _settled = new CowEvidence(herd);
        _present = herd.Present;
    }

    private CowWatch(string name, CowEvidence settled, HerdModel herd)
    {
        Name = name;
        _settled = settled;
        _present = herd.Present;
    }

    /// <summary>Her number.</summary>
    public string Name { get; }

    /// <summary>Her open troubles.</summary>
    public IReadOnlyList<Trouble> Troubles => _troubles;

    /// <summary>Her mean balances; null while they rest on too little to tell of the herd.</summary>
    public Vector3? KnownMean => _settled.Passages >= 20 ? _settled.Filter.Mean : null;

    /// <summary>Place of her weight of tails in <see cref="CowNoise.Tails"/>; null while it rests on too little to tell of the herd.</summary>
    public int? KnownTails => _settled.Passages >= 150 ? _settled.Noise.TailsIndex : null;

    /// <summary>Natural logarithm of her weight, kg; null while unknown.</summary>
    public double? LogWeight => _identity.Weights >= 3 ? _identity.LogWeight : null;

    /// <summary>Folds a passage of hers.</summary>
    public FoldStep Pass(PassageInput input, Reading reading, FoldedHerd folded, LamenessOptions options)
    {
        var passage = input.Passage;
        var herd = folded.Model;
        var platform = folded.PlatformOf(passage.Platform);
        herd.CountPassage(ref _week);
        if (herd.IsLearnt)
            herd.Limits.CountCrossed();
        Settle(folded);
        if (reading.Day != _designDay)
        {
            _designedAt = _settled.Filter.Level;
            Designs.Fill(Balances.FromVector(_designedAt), _designs);
            _designDay = reading.Day;
        }

        _present.CopyFrom(_settled);
        _present.Advance(herd, reading.Ticks, reading.Day);
        var common = platform.Current;
        var surprise = _present.Compare(herd, reading, common);
        var frozen = _troubles.Count > 0;
        var reasons = _identity.Judge(
            herd, options.WeightTolerance, passage.WeightKg, surprise, common, _present.Noise.Dof, _settled.Passages, frozen, reading.Ticks);
        var crossed = new Crossed(Name, reading.Value, passage.WeightKg is { } weight and > 0 ? Math.Log(weight) : double.NaN, reading.Ticks);
        if (reasons.IsEmpty && platform.Newest is { } ahead && IsExchanged(folded, crossed, ahead, common))
            reasons = [QualityReason.WrongCowSuspected];
        Follow(folded, platform, crossed);
        var isEvidence = reasons.IsEmpty && !common.IsTrouble;
        Span<double> sudden = stackalloc double[WatchedPattern.All.Length];
        sudden.Clear();
        if (isEvidence)
            Take(herd, new Pending(reading, passage.Platform, common, crossed), surprise, sudden);
        if (reasons.IsEmpty)
            Vouch(herd, platform, reading, surprise, common, frozen);

        var changes = ImmutableArray.CreateBuilder<AlertChange>();
        if (isEvidence)
            LookAtTroubles(passage.EndedAt, reading.Value - common.Movement, surprise.Noise, herd, options, changes);
        Span<double> evidence = stackalloc double[WatchedPattern.All.Length];
        var rule = Verdict.Weigh(_present, herd.Limits, sudden, common.Number > 0 && platform.Cows > Vouchers, _troubles, EasedAt(reading.Ticks), evidence);
        if (isEvidence && rule >= 0)
            changes.Add(Raise(rule, surprise, reading.Value - common.Movement, passage.EndedAt, herd, options));
        else if (isEvidence && _troubles.Count == 0 && _present.IsLearnt && herd.IsLearnt && !_present.IsHeld(reading.Ticks))
            CountExcursion(herd.Limits);
        foreach (var trouble in _troubles)
            evidence[Array.FindIndex(WatchedPattern.All, w => w.Pattern == trouble.Alert.Pattern && (w.Pattern != AlertPattern.OneLeg || w.Leg == trouble.Alert.Leg))] = trouble.Standing;
        return new FoldStep(Assess(input, surprise, common, reasons, evidence), changes.ToImmutable());
    }

    /// <summary>Folds something known of her.</summary>
    public ImmutableArray<AlertChange> Know(CowEvent known, FoldedHerd folded, long day, LamenessOptions options)
    {
        var herd = folded.Model;
        Settle(folded);
        var changes = ImmutableArray.CreateBuilder<AlertChange>();
        if (known is AlertClosedByHand closed)
        {
            CloseByHand(closed, herd, options, changes);
        }
        else if (known is LeftHerd)
        {
            foreach (var trouble in _troubles)
                changes.Add(trouble.Close(known.At, AlertCloseReason.LeftHerd, trouble.DropOf(_settled.Filter), options.TimeZone));
            _troubles.Clear();
        }
        else
        {
            _settled.Advance(herd, known.At.UtcTicks, day);
            var loosening = Loosening.Of(known);
            var ticks = known.At.UtcTicks;
            _settled.Loosen(
                loosening.Uncertainty, loosening.DriftPerDay, ticks + loosening.DriftFor.Ticks, ticks + loosening.HoldFor.Ticks);
            _history.Clear();
            if (loosening.ForgetsWeight)
                _identity.ForgetWeight();
            if (known is FootTreated treated)
                Examine(treated, options, changes);
        }

        return changes.ToImmutable();
    }

    private void Settle(FoldedHerd folded)
    {
        if (_pending is not { } pending)
            return;
        _pending = null;
        var herd = folded.Model;
        var common = folded.PlatformOf(pending.Platform).Find(pending.Common.Number) ?? pending.Common;
        if (common.IsTrouble || (pending.Behind is { } behind && IsExchanged(folded, pending.Crossed, behind, common)))
            return;
        var reading = pending.Reading;
        _settled.Advance(herd, reading.Ticks, reading.Day);
        var surprise = _settled.Compare(herd, reading, common);
        var frozen = _troubles.Count > 0;
        Span<double> sizes = stackalloc double[CowEvidence.RuleCount];
        var wasLearnt = _settled.Passages >= 20;
        _settled.Take(herd, surprise, reading.Ticks, _designs, frozen, sizes);
        if (frozen || _settled.IsHeld(reading.Ticks))
            return;
        _history.Add(herd, reading.Value - common.Movement, reading.Day, _settled.Noise.Level);
        if (!wasLearnt)
            return;
        herd.Tails.Add(surprise.Distance);
        // The sizes change slowly: one passage in three tells them well enough.
        for (var i = 0; i < sizes.Length && _settled.Passages % 3 == 0; i++)
        {
            if (!double.IsNaN(sizes[i]))
                herd.Limits.CountSize(i, _settled.Noise.TailsIndex, sizes[i]);
        }
    }

    private void Take(HerdModel herd, Pending pending, in Surprise surprise, Span<double> sudden)
    {
        Span<double> sizes = stackalloc double[CowEvidence.RuleCount];
        _present.Take(herd, surprise, pending.Reading.Ticks, _designs, _troubles.Count > 0, sizes);
        _pending = pending;
        if (double.IsNaN(sizes[0]))
            return;
        for (var p = 0; p < sudden.Length; p++)
        {
            var direction = _designs[p * WatchedPattern.DesignsEach];
            var drop = direction.Dot(surprise.Inverse * surprise.Value) / Math.Sqrt(surprise.Inverse.Quadratic(direction));
            sudden[p] = drop / herd.Limits.Sudden(_present.Noise.TailsIndex);
            if (surprise.Distance > Verdict.FarOut)
                sudden[p] = Math.Max(sudden[p], (Verdict.Best(_settled, p) + Abrupt(drop, surprise.Distance)) / (Verdict.Beyond * herd.Limits.For(WatchedPattern.All[p])));
        }
    }

    /// <summary>The newest passage's own log likelihood ratio for a change that is there at once, of the size that suits it best.</summary>
    /// <param name="drop">The drop in the passage, standard deviations.</param>
    /// <param name="distance">Squared distance of the passage from what was expected.</param>
    private double Abrupt(double drop, double distance)
    {
        var dof = _present.Noise.Dof;
        return drop <= 0 ? 0 : (dof + 3) / 2 * Math.Log((dof + distance) / (dof + Math.Max(distance - (drop * drop), 0)));
    }

    /// <summary>Tells the cow ahead who came behind her.</summary>
    private static void Follow(FoldedHerd folded, PlatformMovement platform, Crossed crossed)
    {
        if (platform.Newest is { } ahead && ahead.IsNextTo(crossed) && folded.Cows.GetValueOrDefault(ahead.Cow) is { _pending: { } pending } cow && pending.Crossed == ahead)
            cow._pending = pending with { Behind = crossed };
        platform.Newest = crossed;
    }

    /// <summary>Whether this passage is more likely her neighbour's, and her neighbour's hers.</summary>
    private bool IsExchanged(FoldedHerd folded, Crossed own, Crossed neighbours, in Session common) =>
        own.IsNextTo(neighbours)
        && folded.Cows.TryGetValue(neighbours.Cow, out var neighbour)
        && Known(folded.Model) is { } one && neighbour.Known(folded.Model) is { } other
        && TagExchange.IsLikely(folded.Model, one, own, other, neighbours, common);

    /// <summary>What a passage may be held against; null while she is known too little to tell her from others.</summary>
    private KnownCow? Known(HerdModel herd) => _settled.Passages < 10
        ? null
        : new KnownCow(
            _settled.Filter.Level,
            _settled.Filter.LevelCov + (_settled.Noise.Level * (herd.Noise.Day + herd.Noise.Passage)),
            _settled.Noise.Dof, LogWeight ?? double.NaN, _troubles.Count > 0);

    /// <summary>Adds her to what the platform's session has in common, if she is sound and known well enough to tell.</summary>
    private void Vouch(HerdModel herd, PlatformMovement platform, in Reading reading, in Surprise surprise, in Session common, bool frozen)
    {
        if (frozen || !_settled.IsLearnt)
            return;
        var own = surprise.Cov - common.MovementCov;
        var noise = surprise.Noise;
        if (own.Xx > 4 * noise.Xx || own.Yy > 4 * noise.Yy || own.Zz > 4 * noise.Zz)
            return;
        var dof = _present.Noise.Dof;
        platform.Add(
            reading.Value - (surprise.Expected - common.Movement), own, common.Unrest * (herd.Noise.Passage + herd.Noise.Day), (dof + 3) / (dof + surprise.Distance) * surprise.Distance / 3);
    }

    /// <summary>Tells the herd how far a sound cow's evidence goes by itself.</summary>
    private void CountExcursion(AlarmLimits limits)
    {
        var highest = Verdict.Highest(_present);
        if (highest < AlarmLimits.Quiet && _peak > 0)
        {
            limits.CountPeak(_peak);
            _peak = 0;
        }

        _peak = Math.Max(_peak, highest);
        limits.CountExposed();
    }

    private PassageAssessment Assess(
        PassageInput input, in Surprise surprise, in Session common, ImmutableArray<QualityReason> reasons, ReadOnlySpan<double> evidence)
    {
        // While a trouble is open her normal is the one from before it; what is expected of her next follows her as she is.
        var normal = _troubles.Count > 0 ? _troubles[0].Normal + common.Movement : surprise.Expected;
        var expected = Balances.FromVector(normal).ToShares();
        var cov = surprise.Cov;
        return new PassageAssessment
        {
            PassageId = input.Passage.Id,
            Cow = Name,
            At = input.Passage.EndedAt,
            Reasons = reasons,
            Baseline = _troubles.Count > 0 ? BaselineState.Frozen : _settled.IsLearnt ? BaselineState.Watching : BaselineState.Learning,
            ExpectedShare = expected,
            ShareSpread = PerLeg.From(leg => expected[leg] * Math.Sqrt(cov.Quadratic(LoadDrop.LogShareGradient(expected, leg)))),
            Residual = Balances.FromVector(surprise.Value + (surprise.Expected - normal)),
            CommonMovement = Balances.FromVector(common.Movement),
            OneLegEvidence = new PerLeg<double>(evidence[0], evidence[1], evidence[2], evidence[3]),
            BothHindEvidence = evidence[4],
            BothForeEvidence = evidence[5],
        };
    }
}
