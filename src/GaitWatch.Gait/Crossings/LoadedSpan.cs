namespace GaitWatch.Gait;

/// <summary>A stretch of load: something was on the plates, and where it began and ended is known as far as it was recorded.</summary>
/// <param name="From">When it began, or when the recording of it did.</param>
/// <param name="To">When it ended, or when the recording of it broke off.</param>
/// <param name="Recorded">Its samples with the empties around them; null when some are missing.</param>
internal sealed record LoadedSpan(DateTimeOffset From, DateTimeOffset To, RecordedLoad? Recorded);

/// <summary>A load recorded from an empty platform to an empty platform.</summary>
/// <param name="Stretch">The samples.</param>
/// <param name="Load">Where in them the load is.</param>
/// <param name="Zero">The zero of each cell meanwhile.</param>
internal sealed record RecordedLoad(Stretch Stretch, SampleRange Load, ZeroLine Zero);
