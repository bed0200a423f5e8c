namespace GaitWatch.Simulator;

/// <summary>
/// A plate on its cells is a mass on springs: y'' + 2 d w y' + w^2 y = w^2 u. Advanced exactly from tick to tick for a load held
/// over the tick (closed form of the damped oscillator), so it stays stable whatever the rate.
/// </summary>
internal sealed class PlateBounce
{
    private readonly double _a11, _a12, _a21, _a22;
    private double _y, _v;

    public PlateBounce(double hz, double damping, double tickSeconds)
    {
        var w = 2 * Math.PI * hz;
        var wd = w * Math.Sqrt(1 - damping * damping);
        var decay = Math.Exp(-damping * w * tickSeconds);
        var (sin, cos) = Math.SinCos(wd * tickSeconds);
        _a11 = decay * (cos + damping * w / wd * sin);
        _a12 = decay * sin / wd;
        _a21 = -decay * w * w / wd * sin;
        _a22 = decay * (cos - damping * w / wd * sin);
    }

    /// <summary>What the cells feel at the end of a tick under the load <paramref name="u"/>.</summary>
    public double Next(double u)
    {
        var e = _y - u;
        var y = u + _a11 * e + _a12 * _v;
        _v = _a21 * e + _a22 * _v;
        return _y = y;
    }
}
