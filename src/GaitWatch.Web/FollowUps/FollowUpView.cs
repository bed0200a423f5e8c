namespace GaitWatch.Web;

/// <summary>What the farm itself has to do on a day: a wrap to take off, a block to look at.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Foot"><c>lf rf lh rh</c>.</param>
/// <param name="What">What is to be done, such as <c>wrap-off</c>.</param>
/// <param name="DueOn">The day it is due.</param>
/// <param name="OverdueOn">The day from which it is overdue.</param>
/// <param name="DoneAt">When it was done; null while it is not.</param>
/// <param name="FindingId">The finding it follows.</param>
internal sealed record FollowUpView(
    string Id, string Cow, string Foot, string What, DateOnly DueOn, DateOnly OverdueOn, DateTimeOffset? DoneAt, string FindingId);
