namespace GaitWatch.Gait;

/// <summary>Straight lines through the fall of a leaving foot and the rise of the one that comes down on the same spot.</summary>
internal sealed class SwapLines
{
    /// <summary>How far from the lowest load the steepest fall and rise are looked for, seconds.</summary>
    private const double ReachSeconds = 0.16;

    private readonly double _fallAt, _fallKg, _fallSlope, _riseAt, _riseKg, _riseSlope;

    private SwapLines(double fallAt, double fallKg, double fallSlope, double riseAt, double riseKg, double riseSlope)
    {
        (_fallAt, _fallKg, _fallSlope) = (fallAt, fallKg, fallSlope);
        (_riseAt, _riseKg, _riseSlope) = (riseAt, riseKg, riseSlope);
        Lift = fallAt + (fallKg / -fallSlope);
        Contact = riseAt - (riseKg / riseSlope);
        if (Contact > Lift)
            Lift = Contact = 0.5 * (Lift + Contact);
    }

    /// <summary>Where the fall reaches zero.</summary>
    public double Lift { get; }

    /// <summary>Where the rise leaves zero.</summary>
    public double Contact { get; }

    /// <summary>Lays the lines around the lowest load.</summary>
    public static SwapLines At(PlateSignal plate, int lowest)
    {
        var force = plate.ForceKg;
        var reach = plate.Samples(ReachSeconds);
        lowest = Math.Clamp(lowest, 1, Math.Max(1, plate.Count - 2));
        var (fallAt, fall) = (lowest, -1e-6);
        var (riseAt, rise) = (lowest, 1e-6);
        for (var i = Math.Max(1, lowest - reach); i < lowest; i++)
        {
            var slope = 0.5 * (force[i + 1] - force[i - 1]);
            if (slope < fall)
                (fallAt, fall) = (i, slope);
        }

        for (var i = lowest + 1; i <= Math.Min(plate.Count - 2, lowest + reach); i++)
        {
            var slope = 0.5 * (force[i + 1] - force[i - 1]);
            if (slope > rise)
                (riseAt, rise) = (i, slope);
        }

        return new SwapLines(fallAt, Math.Min(Math.Max(0, force[fallAt]), -fall * reach), fall, riseAt, Math.Min(Math.Max(0, force[riseAt]), rise * reach), rise);
    }

    /// <summary>Part of the load at a sample that the coming foot carries, 0 to 1.</summary>
    public double PartOfComing(double sample)
    {
        if (sample <= Contact)
            return 0;
        if (sample >= Lift)
            return 1;
        var falling = Math.Max(0, _fallKg + (_fallSlope * (sample - _fallAt)));
        var rising = Math.Max(0, _riseKg + (_riseSlope * (sample - _riseAt)));
        return falling + rising > 0 ? rising / (falling + rising) : 0.5;
    }
}
