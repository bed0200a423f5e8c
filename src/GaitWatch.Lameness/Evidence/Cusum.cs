namespace GaitWatch.Lameness;

/// <summary>
/// Page's CUSUM of the log likelihood ratio that, since some passage, a cow's balances have moved by one designed change.
/// Healy's directional CUSUM, with two things a cow needs: tails heavier than normal, and the answer to what the baseline has
/// meanwhile learnt of the change itself. The change is thought to grow over days, as lameness does: tested against one that is there at once, a slow one would
/// be learnt by the baseline as fast as it comes.
/// </summary>
/// <remarks>
/// Page E.S. 1954, Biometrika 41:100-115; Healy J.D. 1987, Technometrics 29:409-412. Since the baseline goes on learning until an alert
/// is raised, part of a change is absorbed by it; <see cref="MeanBias"/>, <see cref="WanderBias"/> and <see cref="DayBias"/> carry along how much, were the
/// change real (Willsky A.S., Jones H.L. 1976, IEEE Trans Autom Control 21:108-112), so the surprise left over is tested against what would be left.
/// </remarks>
internal struct Cusum
{
    /// <summary>The part of a growing change that is thought to be there when evidence begins: it begins when something shows.</summary>
    private const double AtFirst = 0.2;

    /// <summary>Accumulated log likelihood ratio; 0 at a restart.</summary>
    public double Value;

    /// <summary>First passage since the last zero, UTC ticks.</summary>
    public long OnsetTicks;

    /// <summary>Passages since the last zero.</summary>
    public int Count;

    private float _grown;

    private SingleVector3 _meanBias;
    private SingleVector3 _wanderBias;
    private SingleVector3 _dayBias;

    /// <summary>Score and information of the change's size, in units of the design, since the last zero.</summary>
    public double Score;

    /// <summary>See <see cref="Score"/>.</summary>
    public double Information;

    /// <summary>The part of the designed change that is thought to be there by now.</summary>
    public readonly double Grown => _grown;

    /// <summary>What the baseline's mean would have taken on of the designed change.</summary>
    public readonly Vector3 MeanBias => _meanBias.Wide;

    /// <summary>What her wandering would have taken on of it.</summary>
    public readonly Vector3 WanderBias => _wanderBias.Wide;

    /// <summary>What the day would have taken on of it.</summary>
    public readonly Vector3 DayBias => _dayBias.Wide;

    /// <summary>Best estimate of the change since the last zero, in units of the design, grown to the full.</summary>
    public readonly double Size => Information > 0 ? Score / Information : 0;

    /// <summary>A new day: of what the last day would have taken on a fraction is left.</summary>
    public void NewDay(double kept) => _dayBias = SingleVector3.Of(kept * DayBias);

    /// <summary>Time goes by: of what her wandering would have taken on a fraction is left.</summary>
    public void Roam(double kept) => _wanderBias = SingleVector3.Of(kept * WanderBias);

    /// <summary>Takes in one passage and returns the designed change's size in the surprise, in standard deviations.</summary>
    /// <param name="surprise">The passage less what was expected.</param>
    /// <param name="distance">Squared Mahalanobis distance of <paramref name="surprise"/>.</param>
    /// <param name="design">The designed change, balances.</param>
    /// <param name="inverse">Inverse covariance of the surprise.</param>
    /// <param name="tails">Degrees of freedom of the t distribution of surprises.</param>
    /// <param name="gains">What the baseline learns of this surprise.</param>
    /// <param name="ticks">When, UTC ticks.</param>
    /// <param name="riseDays">Days in which the change is thought to grow; 0: it is there at once.</param>
    public double Add(
        Vector3 surprise, double distance, Vector3 design, in Matrix3 inverse, double tails, in Gains gains, long ticks, double riseDays = 0)
    {
        if (Value <= 0)
            this = new Cusum { OnsetTicks = ticks };
        _grown = riseDays <= 0 ? 1 : (float)Math.Min(1, AtFirst + ((ticks - OnsetTicks) / (riseDays * TimeSpan.TicksPerDay)));
        var left = (Grown * design) - MeanBias - WanderBias - DayBias;
        var direction = inverse * left;
        var size = direction.Dot(left);
        var along = direction.Dot(surprise);
        var moved = Math.Max(distance - (2 * along) + size, 0);
        // At zero what speaks against the change leaves it there.
        if (Value <= 0 && moved >= distance)
        {
            this = default;
            return Math.Sqrt(size);
        }

        Value += (tails + 3) / 2 * Math.Log((tails + distance) / (tails + moved));
        var weight = (tails + 3) / (tails + Math.Min(moved, distance));
        Score += weight * along;
        Information += weight * size;
        Count++;
        _meanBias = SingleVector3.Of(MeanBias + (gains.Mean * left));
        _wanderBias = SingleVector3.Of(WanderBias + (gains.Wander * left));
        _dayBias = SingleVector3.Of(DayBias + (gains.Day * left));
        if (Value <= 0)
            this = default;
        return Math.Sqrt(size);
    }
}
