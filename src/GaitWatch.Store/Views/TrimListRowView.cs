using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>A row of the trim list as the wire contract shows it.</summary>
public sealed record TrimListRowView
{
    /// <summary>Place in the order through the chute, from 1.</summary>
    public required int Position { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>Her tag.</summary>
    public string? Eid { get; init; }

    /// <summary>Her pen.</summary>
    public string? Pen { get; init; }

    /// <summary>Why, such as <c>alert</c>.</summary>
    public required string Reason { get; init; }

    /// <summary>The leg to lift first.</summary>
    public string? Leg { get; init; }

    /// <summary>How much less she puts on it, per cent.</summary>
    public double? LoadDropPercent { get; init; }

    /// <summary>The alert's onset day.</summary>
    public DateOnly? Since { get; init; }

    /// <summary>How soon.</summary>
    public string? Urgency { get; init; }

    /// <summary>Days since she calved; null when dry or not said.</summary>
    public int? DaysInMilk { get; init; }

    /// <summary>When she is due to calve.</summary>
    public DateOnly? DueOn { get; init; }

    /// <summary>When she last crossed a platform.</summary>
    public DateTimeOffset? LastSeenAt { get; init; }

    /// <summary>What was found last on that foot; null when nothing was recorded.</summary>
    public string? LastFinding { get; init; }

    /// <summary>Since when a block is worn there; null when none is.</summary>
    public DateOnly? BlockOn { get; init; }

    /// <summary>The withdrawal date the farm entered; null when none.</summary>
    public DateOnly? WithdrawalUntil { get; init; }

    /// <summary>What to do beyond the leg named.</summary>
    public string? Note { get; init; }

    /// <summary>Whether the visit has time for her.</summary>
    public bool HasPlace { get; init; } = true;

    /// <summary>Whether a person put her on the list.</summary>
    public bool IsPinned { get; init; }

    /// <summary>When a person ticked her off; null while nobody did.</summary>
    public DateTimeOffset? DoneAt { get; init; }

    /// <summary>How a row looks on the wire.</summary>
    public static TrimListRowView Of(TrimListRow row) => new()
    {
        Position = row.Position,
        Cow = row.Cow,
        Eid = row.Eid?.ToString(),
        Pen = row.Pen,
        Reason = row.Reason.WireName(),
        Leg = row.Leg?.WireName(),
        LoadDropPercent = row.LoadDropPercent,
        Since = row.Since,
        Urgency = row.Urgency?.WireName(),
        DaysInMilk = row.DaysInMilk,
        DueOn = row.DueOn,
        LastSeenAt = row.LastSeenAt,
        LastFinding = row.LastFinding,
        BlockOn = row.BlockOn,
        WithdrawalUntil = row.WithdrawalUntil,
        Note = row.Note,
        HasPlace = row.HasPlace,
        IsPinned = row.IsPinned,
        DoneAt = row.DoneAt,
    };
}
