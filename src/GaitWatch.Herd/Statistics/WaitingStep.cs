namespace GaitWatch.Herd;

/// <summary>A step of the curve.</summary>
/// <param name="Days">When.</param>
/// <param name="AtRisk">How many were watched just before.</param>
/// <param name="Events">How many it happened to.</param>
/// <param name="Waiting">The fraction it has not happened to after it.</param>
/// <param name="Lower">95 % interval of <paramref name="Waiting"/>, lower end; null once nobody waits.</param>
/// <param name="Upper">95 % interval of <paramref name="Waiting"/>, upper end; null once nobody waits.</param>
public readonly record struct WaitingStep(double Days, int AtRisk, int Events, double Waiting, double? Lower, double? Upper);
