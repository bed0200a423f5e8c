using MathNet.Numerics.Statistics;

namespace GaitWatch.Lameness;

/// <summary>How much a sound cow's daily mean load of a leg varies.</summary>
public static class SoundSpread
{
    // Steadier than this no cow walks; it keeps a band from shrinking to nothing on a lucky run of days. Ours, no source.
    private const double LeastPercent = 0.5;

    // A standard deviation of a normal distribution is this many median absolute deviations: 1 / quantile of the normal at 3/4.
    private const double PerMedianDeviation = 1.482602218505602;

    /// <summary>
    /// Robust standard deviation of daily mean drops before onset, per cent: the median absolute deviation, scaled to agree
    /// with the standard deviation on normal data. Null when there are too few days.
    /// </summary>
    /// <param name="foot">The treated foot.</param>
    /// <param name="readings">Readings of the leg; those from onset on are passed over.</param>
    /// <param name="options">Settings.</param>
    public static double? Of(TreatedFoot foot, IEnumerable<LoadReading> readings, RecoveryOptions options)
    {
        var onset = DailyDrops.DayOf(foot.OnsetAt, options);
        var earliest = onset.AddDays(-options.SoundDaysBefore);
        var drops = DailyDrops.Of(foot, readings, options)
            .Where(day => day.Day >= earliest && day.Day < onset && !day.IsMasked)
            .Select(day => day.DropPercent).ToArray();
        if (drops.Length < options.FewestSoundDays)
            return null;
        var middle = drops.Median();
        return Math.Max(PerMedianDeviation * drops.Select(drop => Math.Abs(drop - middle)).Median(), LeastPercent);
    }
}
