using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>
/// Whether a treated foot takes its weight again. Every drop is 100 (1 - share / expected share) of that leg, the expectation
/// being the one from before onset; a drop below 0 is a leg that carries more than its normal.
/// </summary>
public sealed record RecoveryAssessment
{
    /// <summary>The finding that treated it.</summary>
    public required string FindingId { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>The foot.</summary>
    public required Leg Foot { get; init; }

    /// <summary>When it was treated.</summary>
    public required DateTimeOffset TreatedAt { get; init; }

    /// <summary>Where it stands.</summary>
    public required RecoveryStatus Status { get; init; }

    /// <summary>Mean drop of the last days before treatment, per cent; null when she was not measured then.</summary>
    public double? DropPercentAtTreatment { get; init; }

    /// <summary>Drop by the fitted curve on the last day she was measured, per cent; null when nothing can be said.</summary>
    public double? DropPercentNow { get; init; }

    /// <summary>95 % interval of <see cref="DropPercentNow"/>, lower end; null when that is.</summary>
    public double? DropLowerPercent { get; init; }

    /// <summary>95 % interval of <see cref="DropPercentNow"/>, upper end; null when that is.</summary>
    public double? DropUpperPercent { get; init; }

    /// <summary>Days in which half of the way to the curve's end is covered; null when the curve has no shape to tell it from.</summary>
    public double? HalfLifeDays { get; init; }

    /// <summary>Half width of the normal band around no drop, per cent; null without a baseline from before onset.</summary>
    public double? BandPercent { get; init; }

    /// <summary>The day the fitted curve enters the normal band; null when it does not, or she is not recovering.</summary>
    public DateOnly? ExpectedNormalOn { get; init; }

    /// <summary>The day on which recovery was shown; null while it is not.</summary>
    public DateOnly? RecoveredOn { get; init; }

    /// <summary>Her last accepted passage that counts here; null when she has not been measured since.</summary>
    public DateTimeOffset? LastSeenAt { get; init; }

    /// <summary>
    /// Mean drop of the days around judgement on which nothing masked her walk, per cent; null while that time is not over, or where too
    /// few such days are in it.
    /// </summary>
    public double? DropPercentWhenJudged { get; init; }

    /// <summary>The fitted curve; null when there are too few days for one.</summary>
    public RecoveryCurve? Curve { get; init; }

    /// <summary>Mean drop of each day since treatment, oldest first.</summary>
    public ImmutableArray<DailyDrop> Days { get; init; } = [];

    /// <summary>Blocks, wraps and pain relief, oldest first.</summary>
    public ImmutableArray<RecoveryMark> Marks { get; init; } = [];

    /// <summary>In plain words, why this status.</summary>
    public required string Explanation { get; init; }

    /// <summary>Whether she is to be seen again: shown to be stalled or worse.</summary>
    public bool IsNotRecovering => Status is RecoveryStatus.Stalled or RecoveryStatus.Worse;
}
