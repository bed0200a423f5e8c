namespace GaitWatch.Gait;

/// <summary>What one crossing tells of how a plate reads at its exit cell against its entry cell.</summary>
/// <param name="Percent">How much more the plate reads for the same load at the exit cell than at the entry cell, per cent.</param>
/// <param name="Weight">Weight of this figure among others, in inverse variance: the squared way of the feet over the squared way between the cells.</param>
/// <param name="LoadKg">The mean load of the feet it rests on while they stood, kg.</param>
public readonly record struct PlateEnds(double Percent, double Weight, double LoadKg)
{
    /// <summary>
    /// Of one plate in one crossing; null when no leg stood wholly on it twice, or her stride time is unknown.
    /// </summary>
    /// <remarks>
    /// <para>A leg carries the same load at two of its footfalls of one crossing: impulse over stride time does not depend on where
    /// she stands. What differs, beyond the noise, is the plate. A plate on two cells reads g0 (1 - u) + g1 u of a load at u, the
    /// part of the way from the first cell to the last, so that the log ratio of the two readings over the difference of u is the
    /// mismatch of the gains. Two feet on a plate at once change nothing: places and loads are both told by the same cells, and each
    /// foot comes out as it would alone. On more cells a stiff plate still reads linearly in u, so the same figure compares its outermost
    /// cells; what single cells in between do cannot be told by walking over.</para>
    /// <para>A pace that changes would look the same were it not for the stride time of each stance.</para>
    /// </remarks>
    internal static PlateEnds? Of(TwinPlate platform, PlateSide side, IReadOnlyList<FootOnPlate> feet, double step)
    {
        var (first, last) = Span(platform, side);
        double product = 0, square = 0, load = 0, stood = 0;
        for (var j = 0; j < feet.Count; j++)
        {
            if (!CanBeUsed(feet[j], side) || Before(feet, j, side) is not { } before)
                continue;
            var way = (feet[j].Line.Middle - before.Line.Middle) / (last - first);
            var ratio = Math.Log(feet[j].ImpulseKgSeconds / feet[j].StrideSeconds!.Value * before.StrideSeconds!.Value / before.ImpulseKgSeconds);
            product += way * ratio;
            square += way * way;
            load += before.ImpulseKgSeconds + feet[j].ImpulseKgSeconds;
            stood += (before.Lift - before.Contact + feet[j].Lift - feet[j].Contact) * step;
        }

        return square > LeastWay * LeastWay && double.IsFinite(product) && double.IsFinite(load / stood) ? new PlateEnds(100 * product / square, square, load / stood) : null;
    }

    /// <summary>Feet that have gone less far than this part of the way between the cells tell nothing.</summary>
    private const double LeastWay = 0.1;

    /// <summary>Where the first and the last cell of a plate stand, metres from the entry edge.</summary>
    internal static (double First, double Last) Span(TwinPlate platform, PlateSide side)
    {
        var xs = platform.Cells.Where(cell => cell.Plate == side).Select(cell => cell.X);
        return (xs.Min(), xs.Max());
    }

    private static bool CanBeUsed(FootOnPlate foot, PlateSide side) =>
        foot.Side == side && foot is { IsWhole: true, Leg: not null, StrideSeconds: > 0, ImpulseKgSeconds: > 0 };

    // The footfall of the same leg before this one.
    private static FootOnPlate? Before(IReadOnlyList<FootOnPlate> feet, int j, PlateSide side)
    {
        for (var i = j - 1; i >= 0; i--)
        {
            if (feet[i].Side == side && feet[i].Leg == feet[j].Leg)
                return CanBeUsed(feet[i], side) ? feet[i] : null;
        }

        return null;
    }
}
