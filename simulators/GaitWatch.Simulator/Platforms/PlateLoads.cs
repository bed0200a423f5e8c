namespace GaitWatch.Simulator;

/// <summary>Load on both plates and its moment about the entry edge, tick by tick; feet add themselves.</summary>
internal sealed class PlateLoads(int ticks, double tickSeconds, double lengthMetres)
{
    private readonly double[] _leftForce = new double[ticks], _rightForce = new double[ticks];
    private readonly double[] _leftMoment = new double[ticks], _rightMoment = new double[ticks];

    public int Ticks => ticks;

    public double TickSeconds => tickSeconds;

    public double[] ForceKg(bool left) => left ? _leftForce : _rightForce;

    public double[] MomentKgMetres(bool left) => left ? _leftMoment : _rightMoment;

    /// <summary>
    /// Adds a foot's force. It presses evenly on the ground within <paramref name="halfWidth"/> of its centre of pressure; only
    /// the part of that stretch which lies on the plate loads it, and at that part's own middle.
    /// </summary>
    /// <returns>The part that the plate takes, kg.</returns>
    public double Add(bool left, int tick, double kg, double centre, double halfWidth)
    {
        var from = Math.Max(0, centre - halfWidth);
        var to = Math.Min(lengthMetres, centre + halfWidth);
        if (to <= from)
            return 0;
        var onPlate = kg * (to - from) / (2 * halfWidth);
        ForceKg(left)[tick] += onPlate;
        MomentKgMetres(left)[tick] += onPlate * 0.5 * (from + to);
        return onPlate;
    }
}
