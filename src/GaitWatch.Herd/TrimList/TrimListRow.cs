using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A cow on a visit's list with all that the trimmer wants to know before.</summary>
public sealed record TrimListRow
{
    /// <summary>Place in the order through the chute, from 1.</summary>
    public required int Position { get; init; }

    /// <summary>Whether the visit has time for her.</summary>
    public required bool HasPlace { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>Her tag; null when she wears none.</summary>
    public Eid? Eid { get; init; }

    /// <summary>Her pen; null when not said.</summary>
    public string? Pen { get; init; }

    /// <summary>Why; of several reasons the most pressing.</summary>
    public required TrimListReason Reason { get; init; }

    /// <summary>The leg to lift first; null for a routine trim.</summary>
    public Leg? Leg { get; init; }

    /// <summary>How much less she puts on it, per cent of her own normal.</summary>
    public double? LoadDropPercent { get; init; }

    /// <summary>The alert's onset day.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>How soon; null when no alert is open.</summary>
    public Urgency? Urgency { get; init; }

    /// <summary>Days since she calved, on the day of the visit; null when dry or not said.</summary>
    public int? DaysInMilk { get; init; }

    /// <summary>The day she was dried off; null while she is in milk.</summary>
    public DateOnly? DryFrom { get; init; }

    /// <summary>When she is due to calve.</summary>
    public DateOnly? DueOn { get; init; }

    /// <summary>When she last crossed a platform.</summary>
    public DateTimeOffset? LastSeenAt { get; init; }

    /// <summary>The last finding on that foot, or, where no foot is named, on any: day and words; null when nothing was recorded.</summary>
    public string? LastFinding { get; init; }

    /// <summary>Since when a block is worn on that foot, or, where no foot is named, on any; null when none is.</summary>
    public DateOnly? BlockOn { get; init; }

    /// <summary>The withdrawal date the farm entered, while it lies ahead.</summary>
    public DateOnly? WithdrawalUntil { get; init; }

    /// <summary>Whether a person put her on the list.</summary>
    public bool IsPinned { get; init; }

    /// <summary>Whether digital dermatitis is known to be active on one of her feet.</summary>
    public bool HasActiveDermatitis { get; init; }

    /// <summary>When a person ticked her off; null while nobody did, or the tick was taken back.</summary>
    public DateTimeOffset? DoneAt { get; init; }

    /// <summary>What to do beyond the leg named, and what else is due; sentences, null when there is nothing to say.</summary>
    public string? Note { get; init; }
}
