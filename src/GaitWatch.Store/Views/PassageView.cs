using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>A passage as the wire contract shows it.</summary>
public sealed record PassageView
{
    /// <summary>Its id.</summary>
    public required string Id { get; init; }

    /// <summary>The platform.</summary>
    public required string Platform { get; init; }

    /// <summary>Whose it is; null when nobody's.</summary>
    public string? Cow { get; init; }

    /// <summary>The tag; null when none was told.</summary>
    public string? Eid { get; init; }

    /// <summary>First contact.</summary>
    public required DateTimeOffset StartedAt { get; init; }

    /// <summary>Last lift.</summary>
    public required DateTimeOffset EndedAt { get; init; }

    /// <summary><c>accepted</c> or <c>rejected</c>.</summary>
    public required string Quality { get; init; }

    /// <summary>All reasons that hold, the decisive one first.</summary>
    public required string[] Reasons { get; init; }

    /// <summary>Body weight, kg.</summary>
    public double? WeightKg { get; init; }

    /// <summary>Mean stride time, seconds.</summary>
    public double? StrideSeconds { get; init; }

    /// <summary>Mean speed.</summary>
    public double? SpeedMetresPerSecond { get; init; }

    /// <summary>What each leg did.</summary>
    public required PerLeg<LegLoad> Legs { get; init; }
}
