namespace GaitWatch.Web;

/// <summary>What was found and done at a foot.</summary>
/// <param name="Id">The caller's id of it.</param>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
/// <param name="Foot"><c>lf rf lh rh</c>.</param>
/// <param name="Lesion">An ICAR code, <c>foreign-body</c>, <c>other</c> or <c>none</c>.</param>
internal sealed record FindingView(string Id, string Cow, DateTimeOffset At, string Foot, string Lesion);

/// <summary>Whether a treated foot takes her weight again.</summary>
/// <param name="FindingId">The finding it follows.</param>
/// <param name="Foot"><c>lf rf lh rh</c>.</param>
/// <param name="TreatedAt">When it was treated.</param>
/// <param name="Status"><c>recovering</c>, <c>recovered</c>, <c>stalled</c>, <c>worse</c> or <c>too-early</c>.</param>
internal sealed record RecoveryView(string FindingId, string Foot, DateTimeOffset TreatedAt, string Status);
