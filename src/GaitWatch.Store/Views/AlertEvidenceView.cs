using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>The series behind one alert: what was seen, what was expected, and how the evidence grew to its limit.</summary>
public sealed record AlertEvidenceView
{
    /// <summary>The alert.</summary>
    public required string AlertId { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary><c>one-leg</c>, <c>both-hind</c> or <c>both-fore</c>: whose evidence <see cref="EvidencePointView.Evidence"/> is.</summary>
    public required string Pattern { get; init; }

    /// <summary><c>lf rf lh rh</c>; of a pair, the worse: whose shares the points are.</summary>
    public required string Leg { get; init; }

    /// <summary>When the change began, as the data tell: the evidence's last zero.</summary>
    public required DateTimeOffset OnsetAt { get; init; }

    /// <summary>When the evidence passed its limit.</summary>
    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>When it was closed; null while it is not.</summary>
    public DateTimeOffset? ClosedAt { get; init; }

    /// <summary>
    /// The limit in the units of <see cref="EvidencePointView.Evidence"/>: always 1, since evidence is told as a fraction of the limit that the farm's budget allows.
    /// </summary>
    public double Limit { get; init; } = 1;

    /// <summary>Her passages that were measured whole, oldest first.</summary>
    public required IReadOnlyList<EvidencePointView> Points { get; init; }
}

/// <summary>One passage as evidence for or against an alert.</summary>
public sealed record EvidencePointView
{
    /// <summary>The passage.</summary>
    public required string PassageId { get; init; }

    /// <summary>When it was decided: the passage's end.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary><c>learning</c>, <c>watching</c>, or <c>frozen</c> while an alert is open: then the normal shown is the one from before onset.</summary>
    public required string Baseline { get; init; }

    /// <summary>Reasons why the passage was no evidence; empty when it was.</summary>
    public required string[] Reasons { get; init; }

    /// <summary>The share that the leg carried, 0 to 1.</summary>
    public required double Share { get; init; }

    /// <summary>The share expected of it, what moved the whole herd included; null while nothing is known of her.</summary>
    public double? ExpectedShare { get; init; }

    /// <summary>Standard deviation of one passage's share around the expected.</summary>
    public double? ShareSpread { get; init; }

    /// <summary>The residual: share less expected share, in standard deviations of one passage. Below 0 the leg carries less.</summary>
    public double? ResidualDeviations { get; init; }

    /// <summary>The residual of the passage in balances, after baseline and common movement.</summary>
    public Balances? Residual { get; init; }

    /// <summary>What moved everybody in the session, balances.</summary>
    public Balances? CommonMovement { get; init; }

    /// <summary>
    /// Evidence for the alert's pattern (and leg) as a fraction of the limit: 1 raises it. While it is open: the drop as a multiple of that with which it was raised.
    /// </summary>
    public required double Evidence { get; init; }

    /// <summary>Evidence of each leg alone, for the legs that were not named.</summary>
    public required PerLeg<double> LegEvidence { get; init; }
}
