namespace GaitWatch.Herd;

/// <summary>The farm did what a follow-up asked for.</summary>
/// <param name="At">When it was done.</param>
/// <param name="FollowUpId">Which one; its id rests on the finding, not on anything that late data could change.</param>
/// <param name="By">Who; may be empty.</param>
/// <param name="Note">What was seen; may be empty.</param>
public sealed record FollowUpDoneWrite(DateTimeOffset At, string FollowUpId, string By, string Note) : FarmWrite(At);
