using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>One crossing of a platform by one animal, measured.</summary>
public sealed record Passage
{
    /// <summary>Unique over all platforms: platform and first contact for a crossing analysed here, platform and the device's id for its own sum.</summary>
    public required string Id { get; init; }

    /// <summary>The platform crossed.</summary>
    public required string Platform { get; init; }

    /// <summary>The tag that names the animal; null when none could be told.</summary>
    public Eid? Eid { get; init; }

    /// <summary>First contact.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Last lift.</summary>
    public required DateTimeOffset EndedAt { get; init; }

    /// <summary>All reasons not to use it, the decisive one first; empty when it is accepted.</summary>
    public ImmutableArray<QualityReason> Reasons { get; init; } = [];

    /// <summary>Best estimate of body weight, kg; it need not equal the sum of the legs' loads.</summary>
    public double? WeightKg { get; init; }

    /// <summary>Mean stride time, seconds.</summary>
    public double? StrideSeconds { get; init; }

    /// <summary>Mean speed between first and last footfall, metres per second.</summary>
    public double? SpeedMetresPerSecond { get; init; }

    /// <summary>What each leg did.</summary>
    public PerLeg<LegLoad> Legs { get; init; }

    /// <summary>What it tells of the left plate's ends; null without frames or when no leg stood wholly there twice.</summary>
    public PlateEnds? LeftEnds { get; init; }

    /// <summary>What it tells of the right plate's ends; null without frames or when no leg stood wholly there twice.</summary>
    public PlateEnds? RightEnds { get; init; }

    /// <summary>Whether the passage may be used: no reason speaks against it.</summary>
    public bool IsAccepted => Reasons.IsEmpty;

    /// <summary>The passage with further reasons, each once, in order of rank.</summary>
    public Passage With(params ReadOnlySpan<QualityReason> more)
    {
        var all = new SortedSet<QualityReason>(Reasons);
        foreach (var reason in more)
            all.Add(reason);
        return this with { Reasons = [.. all] };
    }
}
