namespace GaitWatch.Simulator;

/// <summary>Strides done over time by an animal that goes, stands and goes back; it starts and stops along a cosine.</summary>
internal sealed class GoAndStand(double startStrides, double stridesPerSecond)
{
    public const double TickSeconds = 0.002;
    private readonly List<double> _strides = [startStrides];

    /// <summary>Strides done at each tick.</summary>
    public IReadOnlyList<double> Strides => _strides;

    /// <summary>Goes on, or back, to a phase, starting and ending at rest.</summary>
    public GoAndStand Go(double strides)
    {
        var from = _strides[^1];
        var way = Math.Abs(strides - from);
        // Speeding up over 0.6 s covers 0.3 s of going; a short way is one swing.
        var ramp = Math.Min(0.6, way / stridesPerSecond);
        var seconds = (way / stridesPerSecond) + ramp;
        for (var t = TickSeconds; t < seconds; t += TickSeconds)
            _strides.Add(from + (Math.Sign(strides - from) * stridesPerSecond * (Covered(t, ramp) - Covered(t - (seconds - ramp), ramp))));
        _strides.Add(strides);
        return this;
    }

    /// <summary>Stands.</summary>
    public GoAndStand Stand(double seconds)
    {
        _strides.AddRange(Enumerable.Repeat(_strides[^1], (int)(seconds / TickSeconds)));
        return this;
    }

    // Time at full rate that a start along (1 - cos) / 2 is worth after t seconds.
    private static double Covered(double t, double ramp) =>
        t <= 0 ? 0 : t >= ramp ? t - (0.5 * ramp) : (0.5 * t) - (ramp / (2 * Math.PI) * Math.Sin(Math.PI * t / ramp));
}
