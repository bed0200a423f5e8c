using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>An alert whose foot was lifted.</summary>
/// <param name="Alert">The alert.</param>
/// <param name="Kind">What lifting said.</param>
/// <param name="LiftedAt">When.</param>
/// <param name="FindingIds">The findings that say so; empty when it was closed by hand after lifting.</param>
public sealed record AlertLabel(Alert Alert, LabelKind Kind, DateTimeOffset LiftedAt, ImmutableArray<string> FindingIds);
