namespace GaitWatch.Simulator;

/// <summary>
/// How a rigid plate hands a load to its cells. Two cells: the lever rule. More cells at equal stiffness: the plate stays straight,
/// so each cell's part is linear in its place. Either way the parts sum to the load and their moments to its moment.
/// </summary>
internal static class PlateStatics
{
    /// <summary>For each cell the pair (a, b) so that its load is a F + b M, with F in kg and M in kg m about the entry edge.</summary>
    public static (double PerLoad, double PerMoment)[] Split(IReadOnlyList<double> cellX)
    {
        var n = cellX.Count;
        var mean = cellX.Average();
        var spread = cellX.Sum(x => (x - mean) * (x - mean));
        if (n < 2 || spread <= 0)
            throw new ArgumentException("A plate rests on two or more cells at different places along the walking direction.", nameof(cellX));
        return [.. cellX.Select(x => (1.0 / n - (x - mean) * mean / spread, (x - mean) / spread))];
    }
}
