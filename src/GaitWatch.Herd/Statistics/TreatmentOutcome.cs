namespace GaitWatch.Herd;

/// <summary>How many feet were sound after a treatment.</summary>
/// <param name="Arm">The treatment.</param>
/// <param name="Sound">How many of how many.</param>
/// <param name="Lower">95 % interval of the fraction (Wilson), lower end.</param>
/// <param name="Upper">95 % interval of the fraction (Wilson), upper end.</param>
public sealed record TreatmentOutcome(TreatmentArm Arm, Proportion Sound, double Lower, double Upper);
