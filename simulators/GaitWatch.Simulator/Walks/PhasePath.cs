namespace GaitWatch.Simulator;

/// <summary>
/// An animal's stride phase over time, drawn tick by tick: walking to a phase, forward or back, and standing. It starts at rest
/// or in full walk and speeds up and slows down smoothly.
/// </summary>
internal sealed class PhasePath(double startPhase, double stridesPerSecond, double tickSeconds)
{
    private const double RampSeconds = 0.45;
    // Within this part of a stride before and after a rest, a cow goes over from walking forces to standing ones and back.
    private const double SettlingStrides = 0.05;
    private readonly List<double> _phase = [startPhase];
    private readonly List<(int First, int Last)> _rests = [];

    public double[] Phase => [.. _phase];

    /// <summary>At each tick, 0 walking to 1 standing.</summary>
    public double[] Rest
    {
        get
        {
            var rest = new double[_phase.Count];
            foreach (var (first, last) in _rests)
            {
                rest.AsSpan(first, last - first + 1).Fill(1);
                for (var tick = first - 1; tick >= 0 && Settled(tick, first) is > 0 and var part; tick--)
                    rest[tick] = Math.Max(rest[tick], part);
                for (var tick = last + 1; tick < rest.Length && Settled(tick, last) is > 0 and var part; tick++)
                    rest[tick] = Math.Max(rest[tick], part);
            }

            return rest;
        }
    }

    public double Now => _phase[^1];

    public int Ticks => _phase.Count;

    /// <summary>Walks on to a phase.</summary>
    public PhasePath To(double phase, bool fromRest = false, bool toRest = false)
    {
        var start = Now;
        var distance = Math.Abs(phase - start);
        var ramps = (fromRest ? 1 : 0) + (toRest ? 1 : 0);
        // A ramp covers half its time at full rate; a short way leaves room for ramps only.
        var ramp = ramps == 0 ? 0 : Math.Min(RampSeconds, 2 * distance / (ramps * stridesPerSecond));
        var (up, down) = (fromRest ? ramp : 0, toRest ? ramp : 0);
        var level = distance / stridesPerSecond - 0.5 * (up + down);
        var total = up + level + down;
        var ticks = (int)Math.Ceiling(total / tickSeconds);
        for (var tick = 1; tick <= ticks; tick++)
        {
            var t = Math.Min(total, tick * tickSeconds);
            var strides = stridesPerSecond * (Ramp(Math.Min(t, up), up) + Math.Clamp(t - up, 0, level) + RampDown(t - up - level, down));
            _phase.Add(start + Math.Sign(phase - start) * strides);
        }

        _phase[^1] = phase;
        return this;
    }

    /// <summary>Stands still.</summary>
    public PhasePath Stand(double seconds)
    {
        var ticks = (int)(seconds / tickSeconds);
        _rests.Add((_phase.Count, _phase.Count + ticks - 1));
        for (var tick = 0; tick < ticks; tick++)
            _phase.Add(Now);
        return this;
    }

    private double Settled(int tick, int resting)
    {
        var near = Math.Clamp(1 - Math.Abs(_phase[tick] - _phase[resting]) / SettlingStrides, 0, 1);
        return near * near * (3 - 2 * near);
    }

    // Integral of a rate rising from 0 to 1 as a smooth step over the ramp.
    private static double Ramp(double t, double ramp)
    {
        if (ramp <= 0)
            return 0;
        var u = t / ramp;
        return ramp * (u * u * u - 0.5 * u * u * u * u);
    }

    private static double RampDown(double t, double ramp) =>
        ramp <= 0 || t <= 0 ? 0 : 0.5 * ramp - Ramp(ramp - Math.Min(t, ramp), ramp);
}
