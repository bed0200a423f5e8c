using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>An assessed passage and the shares measured in it.</summary>
/// <param name="Assessment">What was expected of her then.</param>
/// <param name="Share">The share each leg carried, 0 to 1.</param>
public readonly record struct AssessedShares(PassageAssessment Assessment, PerLeg<double> Share);
