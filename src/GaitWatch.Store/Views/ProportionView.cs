using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>So many of so many, as the statistics show it.</summary>
/// <param name="Count">How many.</param>
/// <param name="Of">Of how many.</param>
/// <param name="Share">The fraction, 0 to 1; null of none.</param>
/// <param name="Interval">Its 95 % interval (Wilson), 0 to 1; null of none.</param>
public sealed record ProportionView(int Count, int Of, double? Share, double[]? Interval)
{
    /// <summary>How a proportion looks on the wire.</summary>
    public static ProportionView OfCount(Proportion proportion)
    {
        var (lower, upper) = proportion.Interval();
        return new ProportionView(proportion.Count, proportion.Of, proportion.Value, proportion.Of == 0 ? null : [lower, upper]);
    }
}
