using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>One treated foot and what became of it.</summary>
/// <param name="FindingId">The finding that treated it.</param>
/// <param name="Cow">Her number.</param>
/// <param name="Foot">The foot.</param>
/// <param name="TreatedAt">When.</param>
/// <param name="Lesion">The lesion: of several in one sitting the one that explains lameness, then the most severe.</param>
/// <param name="Treatment">How.</param>
/// <param name="IsSound">Whether it was sound at 35 days; null while, or where, nothing tells.</param>
/// <param name="Waiting">How long until recovery was shown; null where her load cannot show it.</param>
public sealed record JudgedTreatment(
    string FindingId, string Cow, Leg Foot, DateTimeOffset TreatedAt, Lesion Lesion, Treatment Treatment, bool? IsSound, WaitingTime? Waiting);
