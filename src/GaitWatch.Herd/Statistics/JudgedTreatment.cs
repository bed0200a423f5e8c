namespace GaitWatch.Herd;

/// <summary>One treated foot and what became of it.</summary>
/// <param name="FindingId">The finding that treated it.</param>
/// <param name="Arm">How.</param>
/// <param name="IsSound">Whether it was sound when judged.</param>
public sealed record JudgedTreatment(string FindingId, TreatmentArm Arm, bool IsSound);
