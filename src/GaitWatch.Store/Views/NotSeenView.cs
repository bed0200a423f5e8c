namespace GaitWatch.Store;

/// <summary>A cow who should cross and does not: the lamest of all may be among these.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Pen">Her pen; null when not said.</param>
/// <param name="LastSeenAt">When she last crossed a platform.</param>
/// <param name="Because"><c>alert</c>: she has an open one; <c>treated</c>: a foot of hers was treated and is not shown to be recovered.</param>
/// <param name="Leg">The leg it is about.</param>
/// <param name="AlertId">Her open alert; null when she has none.</param>
/// <param name="TreatedAt">When the foot was treated; null when it was not.</param>
/// <param name="Sentence">In plain words.</param>
public sealed record NotSeenView(
    string Cow, string? Pen, DateTimeOffset LastSeenAt, string Because, string Leg, string? AlertId, DateTimeOffset? TreatedAt, string Sentence);
