using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>
/// Whether a passage is the cow's whose tag was read: her recent weight, and the odds that another cow of the herd would show this weight
/// and these shares rather than she, sound or lame.
/// </summary>
internal struct Identity
{
    /// <summary>Passages of a known weight before weight is judged.</summary>
    private const double WeightsNeeded = 3;

    /// <summary>Passages known before another cow is suspected.</summary>
    private const long PassagesNeeded = 10;

    /// <summary>So many wrong weights in a row that agree with each other are her new weight: a refusal must not last for ever.</summary>
    private const long MissesToAccept = 6;

    /// <summary>
    /// Odds that a tag is another cow's, before the passage is looked at (ours): about one in a hundred, and a tenth of that where no weight
    /// can bear witness, so that shares alone seldom accuse.
    /// </summary>
    private static readonly double _logPrior = Math.Log(0.01);
    private static readonly double _logPriorUnweighed = Math.Log(0.001);

    private static readonly long _staleTicks = TimeSpan.FromDays(21).Ticks;

    public double LogWeight;
    public double Weights;
    public double LogWeightMissed;
    public long Misses;
    public long Suspected;
    public long WeightTicks;

    /// <summary>Weight is learnt anew: calving, a long dry period.</summary>
    public void ForgetWeight() => (Weights, Misses) = (0, 0);

    /// <summary>Looks at a passage and learns her weight from it.</summary>
    public ImmutableArray<QualityReason> Judge(
        HerdModel herd, double tolerance, double? weightKg, in Surprise s, in Session common, double dof, long passages, bool frozen, long ticks)
    {
        if (ticks - WeightTicks > _staleTicks)
            ForgetWeight();
        var weightKnown = weightKg is > 0 && Weights >= WeightsNeeded;
        var apart = weightKnown ? Math.Log(weightKg!.Value) - LogWeight : 0;
        var implausible = weightKnown && Math.Abs(Math.Exp(apart) - 1) > tolerance;
        var suspected = passages >= PassagesNeeded && IsAnother(herd, s, common, dof, weightKnown, apart, frozen);
        if (implausible && Agrees(apart, tolerance))
        {
            (LogWeight, Weights, implausible, suspected) = (LogWeightMissed, WeightsNeeded, false, false);
            apart = 0;
        }

        Suspected = suspected ? Suspected + 1 : 0;
        if (implausible || suspected)
        {
            return (implausible, suspected) switch
            {
                (true, true) => [QualityReason.WeightImplausible, QualityReason.WrongCowSuspected],
                (true, false) => [QualityReason.WeightImplausible],
                _ => [QualityReason.WrongCowSuspected],
            };
        }

        Misses = 0;
        if (weightKg is > 0)
        {
            if (weightKnown)
                herd.AddWeight(apart * apart);
            Weights = Math.Min(Weights + 1, 20);
            LogWeight += (Math.Log(weightKg.Value) - LogWeight) / Weights;
            WeightTicks = ticks;
        }

        return [];
    }

    private bool Agrees(double apart, double tolerance)
    {
        var log = LogWeight + apart;
        if (Misses > 0 && Math.Abs(log - LogWeightMissed) > tolerance / 2)
            Misses = 0;
        Misses++;
        LogWeightMissed = Misses == 1 ? log : LogWeightMissed + ((log - LogWeightMissed) / Misses);
        return Misses >= MissesToAccept;
    }

    private readonly bool IsAnother(HerdModel herd, in Surprise s, in Session common, double dof, bool weightKnown, double apart, bool frozen)
    {
        var own = TagExchange.LogT(s.Distance, dof);
        if (own > -3 && Math.Abs(apart) < 0.04)
            return false;
        var otherCov = herd.Spread.Cov + herd.Noise.Day + s.Noise + common.MovementCov;
        var apartFromHerd = s.Value + (s.Expected - common.Movement - herd.Spread.Mean);
        var odds = TagExchange.LogT(otherCov.Inverse().Quadratic(apartFromHerd), dof) - (0.5 * Math.Log(otherCov.Determinant / s.Cov.Determinant));
        if (weightKnown)
        {
            // Her own: t with 4 degrees of freedom; the herd's: normal, 12 % (from memory: the spread of a herd of mixed ages).
            const double spread = 0.12;
            odds -= -0.9808 - (0.5 * Math.Log(herd.WeightVariance)) - (2.5 * Math.Log(1 + (apart * apart / herd.WeightVariance / 4)));
            var fromHerd = (LogWeight + apart - herd.Spread.LogWeight) / spread;
            odds += -0.9189 - Math.Log(spread) - (0.5 * fromHerd * fromHerd);
        }

        odds += (1 + Suspected) * (weightKnown ? _logPrior : _logPriorUnweighed);
        // Lameness can only speak for her: where she is likelier sound than another, it need not be asked.
        return odds > own && odds > TagExchange.OrLame(own, s.Expected - common.Movement, s.Value, s.Inverse, dof, frozen);
    }
}
