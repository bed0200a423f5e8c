using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>An early-lameness alert as it stood at some moment. Every time in it is event time.</summary>
public sealed record Alert
{
    /// <summary>From cow, pattern, leg and <see cref="RaisedAt"/>; URL-safe.</summary>
    public required string Id { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>What kind of change.</summary>
    public required AlertPattern Pattern { get; init; }

    /// <summary>The leg that carries less; of a pair, the worse.</summary>
    public required Leg Leg { get; init; }

    /// <summary>How probable each leg is the sore one; sums to 1.</summary>
    public required PerLeg<double> LegProbability { get; init; }

    /// <summary>When the evidence sufficed.</summary>
    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>When the change began, as the data tell.</summary>
    public required DateTimeOffset OnsetAt { get; init; }

    /// <summary>From when on it may have begun: 5 % point of <see cref="OnsetAt"/>; null where too few days before are known.</summary>
    public DateTimeOffset? OnsetEarliestAt { get; init; }

    /// <summary>By when it had begun: 95 % point; null as <see cref="OnsetEarliestAt"/> is.</summary>
    public DateTimeOffset? OnsetLatestAt { get; init; }

    /// <summary>100 (1 - share now / her baseline share) of <see cref="Leg"/>.</summary>
    public required double LoadDropPercent { get; init; }

    /// <summary>95 % interval of <see cref="LoadDropPercent"/>, lower end.</summary>
    public required double LoadDropLowerPercent { get; init; }

    /// <summary>95 % interval of <see cref="LoadDropPercent"/>, upper end.</summary>
    public required double LoadDropUpperPercent { get; init; }

    /// <summary>How soon it asks for action, as her load alone tells; the calendar of visits is not looked at here.</summary>
    public required Urgency Urgency { get; init; }

    /// <summary>Where it stands.</summary>
    public required AlertState State { get; init; }

    /// <summary>When it was closed; null while it is not.</summary>
    public DateTimeOffset? ClosedAt { get; init; }

    /// <summary>Why it was closed; null while it is not.</summary>
    public AlertCloseReason? CloseReason { get; init; }

    /// <summary>Why she is flagged, in plain words for the herd manager.</summary>
    public required string Explanation { get; init; }
}
