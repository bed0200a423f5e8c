namespace GaitWatch.Gait;

/// <summary>What one leg did in a passage. A figure that could not be measured is null, never 0.</summary>
/// <param name="LoadKg">Mean over its whole footfalls of impulse over stride time, kg.</param>
/// <param name="Share">Its load over the sum of the four, 0 to 1; null unless all four legs have a load.</param>
/// <param name="ShareError">One standard error of <paramref name="Share"/>; null where no error is known (a device's own sum).</param>
/// <param name="PeakKg">Mean over its footfalls of the largest load, kg.</param>
/// <param name="StanceSeconds">Mean over its footfalls of the time on the ground, seconds.</param>
/// <param name="Footfalls">How many whole footfalls the figures rest on.</param>
public readonly record struct LegLoad(
    double? LoadKg, double? Share, double? ShareError, double? PeakKg, double? StanceSeconds, int Footfalls)
{
    /// <summary>A leg of which nothing is known.</summary>
    public static LegLoad Unknown { get; }
}
