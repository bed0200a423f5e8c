using System.Collections.Immutable;

namespace GaitWatch.Lameness;

/// <summary>What one input changed.</summary>
/// <param name="Assessment">What a passage told; null for an event.</param>
/// <param name="Changes">Alerts raised, updated, worsened or closed by it.</param>
public readonly record struct FoldStep(PassageAssessment? Assessment, ImmutableArray<AlertChange> Changes);
