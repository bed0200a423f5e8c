namespace GaitWatch.Simulator;

/// <summary>
/// Two stiff plates on springs of unequal stiffness, in one frame. Each heaves and pitches, with a frequency of its own for either; the frame hands a
/// thousandth or two of one plate's load to the other. All figures are invented, order of magnitude.
/// </summary>
internal sealed class SpringFrame
{
    private readonly SimulatedPlatform _platform;
    private readonly double[][] _force, _moment;
    private readonly double _tick;

    public SpringFrame(SimulatedPlatform platform, int ticks, double tickSeconds)
    {
        (_platform, _tick) = (platform, tickSeconds);
        _force = [new double[ticks], new double[ticks]];
        _moment = [new double[ticks], new double[ticks]];
    }

    public int Ticks => _force[0].Length;

    public double TickSeconds => _tick;

    /// <summary>Adds a load at a place.</summary>
    public void Press(bool left, int tick, double kg, double x)
    {
        _force[left ? 0 : 1][tick] += kg;
        _moment[left ? 0 : 1][tick] += kg * x;
    }

    /// <summary>What each cell feels, tick by tick, kg.</summary>
    public double[][] Felt(SeededRandom random)
    {
        var (heaveHz, damping) = (random.Uniform(13, 24), random.Uniform(0.07, 0.2));
        var pitchHz = heaveHz * random.Uniform(1.2, 1.8);
        var across = random.Uniform(0, 0.002);
        var centre = 0.5 * _platform.PlateLengthMetres;
        var cells = new double[_platform.Cells.Length][];
        for (var plate = 0; plate < 2; plate++)
        {
            var (heave, pitch) = (new PlateBounce(heaveHz, damping, _tick), new PlateBounce(pitchHz, damping, _tick));
            var (force, moment) = (new double[Ticks], new double[Ticks]);
            for (var t = 0; t < Ticks; t++)
            {
                var load = _force[plate][t] + (across * (_force[1 - plate][t] - _force[plate][t]));
                var turning = _moment[plate][t] + (across * (_moment[1 - plate][t] - _moment[plate][t]));
                // It pitches by the moment about its own centre.
                force[t] = heave.Next(load);
                moment[t] = pitch.Next(turning - (centre * load)) + (centre * force[t]);
            }

            int[] under = [.. Enumerable.Range(0, cells.Length).Where(cell => _platform.Cells[cell].IsLeft == (plate == 0))];
            var split = Split([.. under.Select(cell => _platform.Cells[cell].X)], [.. under.Select(_ => random.Uniform(0.9, 1.1))]);
            foreach (var (cell, (perLoad, perMoment)) in under.Zip(split))
                cells[cell] = [.. force.Zip(moment, (kg, kgMetres) => (perLoad * kg) + (perMoment * kgMetres))];
        }

        return cells;
    }

    /// <summary>
    /// A stiff plate sinks by a + b x, a spring of stiffness k at x carries k (a + b x): for each its part of the load and of the moment.
    /// </summary>
    internal static (double PerLoad, double PerMoment)[] Split(double[] x, double[] stiffness)
    {
        double s0 = 0, s1 = 0, s2 = 0;
        for (var i = 0; i < x.Length; i++)
        {
            s0 += stiffness[i];
            s1 += stiffness[i] * x[i];
            s2 += stiffness[i] * x[i] * x[i];
        }

        var det = (s0 * s2) - (s1 * s1);
        return [.. x.Zip(stiffness, (at, k) => (k * (s2 - (s1 * at)) / det, k * ((s0 * at) - s1) / det))];
    }
}
