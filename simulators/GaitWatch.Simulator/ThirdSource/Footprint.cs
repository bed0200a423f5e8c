namespace GaitWatch.Simulator;

/// <summary>
/// A stiff sole from -w to w whose pressure rises or falls evenly from heel to toe, p(s) = (1 + 3 c s / w^2) / 2w: its centre of pressure is c
/// ahead of the middle, by no more than w / 3. What lies beyond an edge of the plate loads the floor.
/// </summary>
internal static class Footprint
{
    /// <summary>The part of the force that is on the plate, and where that part presses, m.</summary>
    /// <param name="middle">Middle of the sole, m from the entry edge.</param>
    /// <param name="w">Half its length, m.</param>
    /// <param name="ahead">The centre of pressure ahead of the middle, m.</param>
    /// <param name="plateLength">Length of the plate, m.</param>
    public static (double Part, double X) On(double middle, double w, double ahead, double plateLength)
    {
        var from = Math.Max(-w, -middle);
        var to = Math.Min(w, plateLength - middle);
        if (to <= from)
            return (0, middle);
        var tilt = 3 * Math.Clamp(ahead, -w / 3, w / 3) / (w * w);
        var part = (to - from + (0.5 * tilt * ((to * to) - (from * from)))) / (2 * w);
        var turning = ((0.5 * ((to * to) - (from * from))) + (tilt * ((to * to * to) - (from * from * from)) / 3)) / (2 * w);
        return part <= 1e-9 ? (0, middle) : (part, middle + (turning / part));
    }
}
