using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>What one passage told of one cow: what was expected, what was seen, and where the evidence stood after it.</summary>
public sealed record PassageAssessment
{
    /// <summary>The passage.</summary>
    public required string PassageId { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>When it was decided: the passage's end.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>
    /// Reasons found in the light of her own history that speak against the passage: <see cref="QualityReason.WeightImplausible"/>,
    /// <see cref="QualityReason.WrongCowSuspected"/>. When there is one the passage was no evidence.
    /// </summary>
    public ImmutableArray<QualityReason> Reasons { get; init; } = [];

    /// <summary>What was watched for at the time.</summary>
    public required BaselineState Baseline { get; init; }

    /// <summary>Her baseline share of each leg, the herd's common movement of the moment included; null while nothing is known.</summary>
    public PerLeg<double>? ExpectedShare { get; init; }

    /// <summary>Standard deviation of one passage's share around <see cref="ExpectedShare"/>, everything unexplained included.</summary>
    public PerLeg<double>? ShareSpread { get; init; }

    /// <summary>Residual of the passage, balances, after baseline and common movement.</summary>
    public Balances? Residual { get; init; }

    /// <summary>What moved everybody on this platform in its session, balances.</summary>
    public Balances? CommonMovement { get; init; }

    /// <summary>Evidence that one leg carries less, as a fraction of the limit: 1 raises an alert.</summary>
    public PerLeg<double> OneLegEvidence { get; init; }

    /// <summary>Evidence that both hind legs carry less, as a fraction of the limit.</summary>
    public double BothHindEvidence { get; init; }

    /// <summary>Evidence that both fore legs carry less, as a fraction of the limit.</summary>
    public double BothForeEvidence { get; init; }
}

/// <summary>What a cow's baseline was doing when a passage was assessed.</summary>
public enum BaselineState
{
    /// <summary>Too few passages yet to say anything.</summary>
    Learning,

    /// <summary>Watched.</summary>
    Watching,

    /// <summary>An alert is open: the baseline is not touched.</summary>
    Frozen,
}
