namespace GaitWatch.Lameness;

/// <summary>What one accepted passage tells of the treated leg.</summary>
/// <param name="At">When.</param>
/// <param name="Share">The share of her load the leg carried, 0 to 1.</param>
/// <param name="ExpectedShare">The share expected by her baseline from before onset, the herd's common movement of the moment included, 0 to 1.</param>
public readonly record struct LoadReading(DateTimeOffset At, double Share, double ExpectedShare)
{
    /// <summary>How much less the leg carried than expected, per cent of the expectation.</summary>
    public double DropPercent => 100 * (1 - Share / ExpectedShare);
}
