using System.Collections.Immutable;

namespace GaitWatch.Gait;

/// <summary>How far a weighing instrument may be off at a load, by its class and its verification scale interval e.</summary>
/// <remarks>
/// Both tables are quoted from memory, no copy was at hand: OIML R 76-1 (2006) 3.5.1 table 6, maximum permissible errors on initial
/// verification, twice that in service (3.5.2); NIST Handbook 44 section 2.20 table 6, maintenance tolerances, half of them on
/// acceptance. Neither makes a platform legal for trade; that is for the authority of the place.
/// </remarks>
public static class WeighingTolerance
{
    // Up to how many intervals a band reaches, and its error in intervals.
    private static readonly ImmutableArray<(double UpTo, double Intervals)> _oimlIII = [(500, 0.5), (2_000, 1), (double.MaxValue, 1.5)];
    private static readonly ImmutableArray<(double UpTo, double Intervals)> _nistIII = [(500, 1), (2_000, 2), (4_000, 3), (double.MaxValue, 5)];

    /// <summary>Maximum permissible error on initial verification by OIML R 76-1, kg.</summary>
    /// <param name="accuracyClass">The class.</param>
    /// <param name="intervalKg">The verification scale interval e, kg.</param>
    /// <param name="loadKg">The load, kg; its sign does not matter.</param>
    public static double InitialKg(AccuracyClass accuracyClass, double intervalKg, double loadKg) => intervalKg * Band(
        accuracyClass switch
        {
            AccuracyClass.I => [(50_000, 0.5), (200_000, 1), (double.MaxValue, 1.5)],
            AccuracyClass.II => [(5_000, 0.5), (20_000, 1), (double.MaxValue, 1.5)],
            AccuracyClass.III => _oimlIII,
            _ => [(50, 0.5), (200, 1), (double.MaxValue, 1.5)],
        },
        loadKg / intervalKg);

    /// <summary>Maximum permissible error in service by OIML R 76-1, kg: twice that on initial verification.</summary>
    /// <inheritdoc cref="InitialKg"/>
    public static double InServiceKg(AccuracyClass accuracyClass, double intervalKg, double loadKg) => 2 * InitialKg(accuracyClass, intervalKg, loadKg);

    /// <summary>Maintenance tolerance by NIST Handbook 44 section 2.20, kg.</summary>
    /// <inheritdoc cref="InitialKg"/>
    public static double MaintenanceKg(AccuracyClass accuracyClass, double intervalKg, double loadKg) => intervalKg * Band(
        accuracyClass switch
        {
            AccuracyClass.I => [(50_000, 1), (200_000, 2), (double.MaxValue, 3)],
            AccuracyClass.II => [(5_000, 1), (20_000, 2), (double.MaxValue, 3)],
            AccuracyClass.III => _nistIII,
            _ => [(50, 1), (200, 2), (400, 3), (double.MaxValue, 5)],
        },
        loadKg / intervalKg);

    private static double Band(ImmutableArray<(double UpTo, double Intervals)> bands, double intervals)
    {
        var load = Math.Abs(intervals);
        foreach (var (upTo, error) in bands)
        {
            if (load <= upTo)
                return error;
        }

        return bands[^1].Intervals;
    }
}
