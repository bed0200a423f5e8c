namespace GaitWatch.Gait;

/// <summary>The straight line along the steepest part of a plate's rise or fall.</summary>
/// <param name="Sample">Where it is steepest.</param>
/// <param name="Kg">The load there, kg.</param>
/// <param name="Slope">Kg a sample; never 0.</param>
internal readonly record struct SteepestLine(int Sample, double Kg, double Slope)
{
    /// <summary>How far from the lowest load the steepest part is looked for, seconds.</summary>
    private const double ReachSeconds = 0.16;

    /// <summary>A slope less than this is none, kg a sample.</summary>
    private const double LeastSlope = 1e-6;

    /// <summary>Where the line is zero.</summary>
    public double Zero => Sample - (Kg / Slope);

    /// <summary>The line at a sample, kg.</summary>
    public double At(double sample) => Kg + (Slope * (sample - Sample));

    /// <summary>Along the rise after a sample.</summary>
    public static SteepestLine OfRise(PlateSignal plate, int lowest) => Of(plate, lowest, 1);

    /// <summary>Along the fall before a sample.</summary>
    public static SteepestLine OfFall(PlateSignal plate, int lowest) => Of(plate, lowest, -1);

    private static SteepestLine Of(PlateSignal plate, int lowest, int direction)
    {
        var force = plate.ForceKg;
        var reach = plate.Samples(ReachSeconds);
        lowest = Math.Clamp(lowest, 1, Math.Max(1, plate.Count - 2));
        var (at, steepest) = (lowest, LeastSlope);
        for (var k = 1; k <= reach; k++)
        {
            var i = lowest + (direction * k);
            if (i < 1 || i > plate.Count - 2)
                break;
            var slope = direction * 0.5 * (force[i + 1] - force[i - 1]);
            if (slope > steepest)
                (at, steepest) = (i, slope);
        }

        // Its zero lies no further off than it was looked for.
        return new(at, Math.Min(Math.Max(0, force[at]), steepest * reach), direction * steepest);
    }
}
