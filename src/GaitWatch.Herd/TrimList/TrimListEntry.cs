using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A cow for the trimmer, before the list is put in order.</summary>
public sealed record TrimListEntry
{
    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>Her pen; null when not said.</summary>
    public string? Pen { get; init; }

    /// <summary>Why.</summary>
    public required TrimListReason Reason { get; init; }

    /// <summary>The leg to lift first; null for a routine trim.</summary>
    public Leg? Leg { get; init; }

    /// <summary>Whether both legs of the pair carry less.</summary>
    public AlertPattern? Pattern { get; init; }

    /// <summary>How much less she puts on the leg, per cent of her own normal.</summary>
    public double? LoadDropPercent { get; init; }

    /// <summary>How soon; null when no alert is open.</summary>
    public Urgency? Urgency { get; init; }

    /// <summary>The alert's onset day in the farm's zone.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>Whether digital dermatitis is known to be active on one of her feet: it infects the next cow by the knife.</summary>
    public bool HasActiveDermatitis { get; init; }

    /// <summary>Whether a person put her on the list.</summary>
    public bool IsPinned { get; init; }

    /// <summary>What else is to be done with her, in the order of reasons; sentences.</summary>
    public ImmutableArray<string> Also { get; init; } = [];
}
