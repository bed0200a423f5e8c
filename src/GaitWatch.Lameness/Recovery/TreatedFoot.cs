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

    /// <summary>Until when it is followed: until it was treated anew, at the latest so many days after treatment.</summary>
    public DateTimeOffset FollowedUntil(RecoveryOptions options)
    {
        var last = TreatedAt.AddDays(options.FollowedDays);
        return TreatedAgainAt is { } again && again < last ? again : last;
    }
}
