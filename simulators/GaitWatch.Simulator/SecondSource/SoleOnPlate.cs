namespace GaitWatch.Simulator;

/// <summary>
/// What a sole half over an edge leaves on the plate. It presses hardest at its centre of pressure and fades to nothing at both ends,
/// as (1 + cos(pi s / w)) / 2w for s from -w to w; the parts beyond the edges are lost.
/// </summary>
internal static class SoleOnPlate
{
    /// <summary>The part of the force that is on the plate, and where that part presses, m.</summary>
    public static (double Part, double X) Of(double centre, double w, double plateLength)
    {
        var from = Math.Max(-w, -centre);
        var to = Math.Min(w, plateLength - centre);
        if (to <= from)
            return (0, centre);
        if (from <= -w && to >= w)
            return (1, centre);
        var part = Total(to, w) - Total(from, w);
        return part <= 1e-9 ? (0, centre) : (part, centre + ((Turning(to, w) - Turning(from, w)) / part));
    }

    private static double Total(double s, double w) => (s / (2 * w)) + (Math.Sin(Math.PI * s / w) / (2 * Math.PI));

    private static double Turning(double s, double w) =>
        ((s * s / 2) + (s * w / Math.PI * Math.Sin(Math.PI * s / w)) + (w * w / (Math.PI * Math.PI) * Math.Cos(Math.PI * s / w))) / (2 * w);
}
