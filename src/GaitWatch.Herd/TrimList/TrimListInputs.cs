using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>All that a visit's list is made from, as it stood at one instant.</summary>
public sealed record TrimListInputs
{
    /// <summary>The instant; nothing later is looked at.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>The day of the visit.</summary>
    public required DateOnly Visit { get; init; }

    /// <summary>The farm's days.</summary>
    public required FarmCalendar Calendar { get; init; }

    /// <summary>The farm's cows.</summary>
    public required HerdRegister Register { get; init; }

    /// <summary>Every write of the farm, in any order.</summary>
    public ImmutableArray<FarmWrite> Writes { get; init; } = [];

    /// <summary>The findings of these writes, where they have been gathered already; null to gather them.</summary>
    public FindingLog? Findings { get; init; }

    /// <summary>Alerts as they stood then, closed ones too: one closed by eye asks for a second look.</summary>
    public ImmutableArray<Alert> Alerts { get; init; } = [];

    /// <summary>Recoveries as they stood then.</summary>
    public ImmutableArray<RecoveryAssessment> Recoveries { get; init; } = [];

    /// <summary>When each cow was last seen on a platform.</summary>
    public ImmutableDictionary<string, DateTimeOffset> LastSeen { get; init; } = ImmutableDictionary<string, DateTimeOffset>.Empty;

    /// <summary>When follow-ups are due.</summary>
    public FollowUpOptions FollowUps { get; init; } = new();

    /// <summary>When routine trims are due.</summary>
    public RoutineTrimOptions Routine { get; init; } = new();

    /// <summary>A flagged or treated cow in milk that has not crossed for so long is told as not seen. Common practice, no source.</summary>
    public TimeSpan NotSeenAfter { get; init; } = TimeSpan.FromDays(2);
}
