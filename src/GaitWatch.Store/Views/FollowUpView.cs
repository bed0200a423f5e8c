using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>A follow-up as the wire contract shows it.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Foot">The foot.</param>
/// <param name="What">What is to be done, such as <c>wrap-off</c>.</param>
/// <param name="DueOn">The first day it is due.</param>
/// <param name="OverdueOn">The day from which it is overdue.</param>
/// <param name="DoneAt">When it was done; null while it is not.</param>
/// <param name="FindingId">The finding it follows from; null for a second look after a flag closed by eye.</param>
/// <param name="Sentence">What is to be done and why, in words.</param>
public sealed record FollowUpView(
    string Id, string Cow, string Foot, string What, DateOnly DueOn, DateOnly OverdueOn, DateTimeOffset? DoneAt, string? FindingId, string Sentence)
{
    /// <summary>How a follow-up looks on the wire.</summary>
    public static FollowUpView Of(FollowUp followUp) => new(
        followUp.Id, followUp.Cow, GaitWatch.Gait.Legs.WireName(followUp.Foot), followUp.What.WireName(), followUp.DueOn, followUp.OverdueOn,
        followUp.DoneAt, followUp.FindingId, followUp.Cause.InWords());
}
