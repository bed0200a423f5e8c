using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>A foot that was treated, and what was done to it since.</summary>
public sealed record TreatedFoot
{
    /// <summary>The finding that treated it.</summary>
    public required string FindingId { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>The foot.</summary>
    public required Leg Foot { get; init; }

    /// <summary>When it was treated.</summary>
    public required DateTimeOffset TreatedAt { get; init; }

    /// <summary>When she began to spare it, by the alert; where no alert told, the treatment.</summary>
    public required DateTimeOffset OnsetAt { get; init; }

    /// <summary>When it was treated anew, and another follow-up began; null when it was not.</summary>
    public DateTimeOffset? TreatedAgainAt { get; init; }

    /// <summary>Blocks, wraps and pain relief, also from before the treatment: what is worn still counts. In any order.</summary>
    public ImmutableArray<RecoveryMark> Marks { get; init; } = [];
}

/// <summary>What one accepted passage tells of the treated leg.</summary>
/// <param name="At">When.</param>
/// <param name="Share">The share of her load the leg carried, 0 to 1.</param>
/// <param name="ExpectedShare">The share expected by her baseline from before onset, the herd's common movement of the moment included, 0 to 1.</param>
public readonly record struct LoadReading(DateTimeOffset At, double Share, double ExpectedShare)
{
    /// <summary>How much less the leg carried than expected, per cent of the expectation.</summary>
    public double DropPercent => 100 * (1 - Share / ExpectedShare);
}

/// <summary>The normal that a recovery is held against.</summary>
/// <param name="LearnedUntil">The newest passage it rests on. One that rests on passages after onset is not used: she may have been lame in them.</param>
/// <param name="DailySdPercent">
/// Standard deviation of her daily mean drop while sound, per cent; null to take it from the readings before onset.
/// </param>
public sealed record RecoveryBaseline(DateTimeOffset LearnedUntil, double? DailySdPercent = null);
