using System.Security.Cryptography;
using System.Text;
using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>Something due about one foot, and whether it was done.</summary>
public sealed record FollowUp
{
    /// <summary>From what it follows and why: the same in every fold, URL-safe.</summary>
    public required string Id { get; init; }

    /// <summary>Her number.</summary>
    public required string Cow { get; init; }

    /// <summary>The foot.</summary>
    public required Leg Foot { get; init; }

    /// <summary>What is to be done.</summary>
    public required FollowUpTask What { get; init; }

    /// <summary>Why.</summary>
    public required FollowUpCause Cause { get; init; }

    /// <summary>The first day it is due, in the farm's days.</summary>
    public required DateOnly DueOn { get; init; }

    /// <summary>The day from which it is overdue while not done.</summary>
    public required DateOnly OverdueOn { get; init; }

    /// <summary>When it was done; null while it is not.</summary>
    public DateTimeOffset? DoneAt { get; init; }

    /// <summary>The finding that did it; null when the farm said so, or it is not done.</summary>
    public string? DoneByFinding { get; init; }

    /// <summary>The finding it follows from; null for a second look after a flag closed by eye.</summary>
    public string? FindingId { get; init; }

    /// <summary>Whether it is due and not done on a day.</summary>
    public bool IsDue(DateOnly day) => DoneAt is null && DueOn <= day;

    /// <summary>Whether it is overdue and not done on a day.</summary>
    public bool IsOverdue(DateOnly day) => DoneAt is null && OverdueOn <= day;

    /// <summary>An id from what a follow-up rests on.</summary>
    internal static string MakeId(FollowUpCause cause, string restsOn) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{cause}/{restsOn}")).AsSpan(0, 10));
}
