using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>A passage with what was expected of it at the time.</summary>
/// <param name="Share">The share each leg carried, 0 to 1.</param>
/// <param name="Assessment">What it told; one with reasons is no evidence.</param>
public readonly record struct AssessedPassage(PerLeg<double> Share, PassageAssessment Assessment);
