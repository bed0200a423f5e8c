namespace GaitWatch.Gait;

/// <summary>Whose crossing it was, as the tags tell.</summary>
/// <param name="Eid">The tag; null when none or two would do.</param>
/// <param name="Reason"><see cref="QualityReason.NoTag"/> or <see cref="QualityReason.TwoTags"/>; null when <paramref name="Eid"/> is told.</param>
public readonly record struct TagVerdict(Eid? Eid, QualityReason? Reason);
