using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>An alert as the wire contract shows it.</summary>
public sealed record AlertView
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>Her pen; null when not said.</summary>
    public string? Pen { get; init; }

    /// <summary><c>one-leg</c>, <c>both-hind</c> or <c>both-fore</c>.</summary>
    public required string Pattern { get; init; }

    /// <summary><c>lf rf lh rh</c>; of a pair, the worse.</summary>
    public required string Leg { get; init; }

    /// <summary>How probable each leg is the sore one.</summary>
    public required PerLeg<double> LegProbability { get; init; }

    /// <summary>When the evidence sufficed.</summary>
    public required DateTimeOffset RaisedAt { get; init; }

    /// <summary>When the change began.</summary>
    public required DateTimeOffset OnsetAt { get; init; }

    /// <summary>100 (1 - share now / her baseline share) of the leg.</summary>
    public required double LoadDropPercent { get; init; }

    /// <summary>95 % interval of the drop, per cent.</summary>
    public required double[] LoadDropInterval { get; init; }

    /// <summary><c>today</c>, <c>next-visit</c> or <c>watch</c>, the calendar of visits considered.</summary>
    public required string Urgency { get; init; }

    /// <summary><c>open</c>, <c>listed</c>, <c>examined</c> or <c>closed</c>.</summary>
    public required string State { get; init; }

    /// <summary>When late data last changed it; null when none did.</summary>
    public DateTimeOffset? RevisedAt { get; init; }

    /// <summary>When it was closed; null while it is not.</summary>
    public DateTimeOffset? ClosedAt { get; init; }

    /// <summary>Why it was closed; null while it is not.</summary>
    public string? CloseReason { get; init; }

    /// <summary>What lifting the foot said: <c>right</c>, <c>minor</c>, <c>other-leg</c> or <c>nothing-found</c>; null while it was not lifted.</summary>
    public string? Label { get; init; }

    /// <summary>When the foot that says so was first in hand; null while none was.</summary>
    public DateTimeOffset? LiftedAt { get; init; }

    /// <summary>The treatment of that leg or the opposite one that it comes after; null when there is none.</summary>
    public AfterTreatmentView? AfterTreatment { get; init; }

    /// <summary>When she last crossed a platform.</summary>
    public DateTimeOffset? LastSeenAt { get; init; }

    /// <summary>Why she is flagged, in plain words.</summary>
    public required string Explanation { get; init; }
}

/// <summary>A treatment that an alert comes after.</summary>
/// <param name="Kind"><c>relapse</c>: on the treated leg; <c>opposite-leg</c>.</param>
/// <param name="FindingId">The finding that treated.</param>
/// <param name="Foot">The treated foot.</param>
/// <param name="TreatedAt">When.</param>
/// <param name="Sentence">In plain words.</param>
public sealed record AfterTreatmentView(string Kind, string FindingId, string Foot, DateTimeOffset TreatedAt, string Sentence);
