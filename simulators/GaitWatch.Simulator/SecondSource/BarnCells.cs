namespace GaitWatch.Simulator;

/// <summary>
/// A row of cells under each plate as a barn has them. Between two neighbouring cells the law of the lever holds. Each corner rings in
/// two modes of its own; noise is white and slow together, with the hum of the mains and of a pump; zeros drift and wander. All
/// figures are invented, order of magnitude.
/// </summary>
internal sealed class BarnCells
{
    private readonly SimulatedPlatform _platform;
    private readonly double _tick;
    private readonly double[][] _load;
    private readonly int[][] _row;

    public BarnCells(SimulatedPlatform platform, int ticks, double tickSeconds)
    {
        (_platform, _tick) = (platform, tickSeconds);
        _load = [.. platform.Cells.Select(_ => new double[ticks])];
        _row = [Row(true), Row(false)];

        int[] Row(bool left) =>
            [.. Enumerable.Range(0, platform.Cells.Length).Where(cell => platform.Cells[cell].IsLeft == left).OrderBy(cell => platform.Cells[cell].X)];
    }

    public int Ticks => _load[0].Length;

    /// <summary>Puts a foot on the platform; what it was there, or null when it never met a plate.</summary>
    public FootfallTruth? Add(Tread tread)
    {
        var length = _platform.PlateLengthMetres;
        if (!tread.Touches(length))
            return null;
        var row = _row[tread.IsOnLeft ? 0 : 1];
        double impulse = 0, peak = 0;
        var first = Math.Max(0, (int)Math.Ceiling(tread.ContactSeconds / _tick));
        for (var tick = first; tick < Ticks && tick * _tick < tread.LiftSeconds; tick++)
        {
            var fraction = tread.FractionAt(tick * _tick);
            var ahead = Math.Clamp(tread.Roll.At(fraction), -tread.HalfLengthMetres + 0.015, tread.HalfLengthMetres - 0.015);
            var (part, x) = SoleOnPlate.Of(tread.X + ahead, tread.HalfLengthMetres - Math.Abs(ahead), length);
            var kg = part * tread.Kg(tick * _tick, fraction);
            if (kg == 0)
                continue;
            Lever(row, tick, kg, x);
            impulse += kg * _tick;
            peak = Math.Max(peak, kg);
        }

        return new(tread.Animal, tread.Foot, tread.ContactSeconds, tread.LiftSeconds, tread.X, tread.IsWhole(length), impulse, peak, tread.StrideSeconds);
    }

    /// <summary>What the cells send.</summary>
    public float[][] Read(SeededRandom random, int ticksPerSample) =>
        [.. _load.Select(load => Read(load, random, ticksPerSample))];

    private void Lever(int[] row, int tick, double kg, double x)
    {
        var k = 1;
        while (k < row.Length - 1 && _platform.Cells[row[k]].X < x)
            k++;
        var (from, to) = (_platform.Cells[row[k - 1]].X, _platform.Cells[row[k]].X);
        var part = (x - from) / (to - from);
        _load[row[k - 1]][tick] += kg * (1 - part);
        _load[row[k]][tick] += kg * part;
    }

    private float[] Read(double[] load, SeededRandom random, int ticksPerSample)
    {
        var gain = 1 + random.Normal(0, 0.0025, -0.005, 0.005);
        var zero = random.Uniform(-15, 15);
        var drift = random.Uniform(-4, 4) / 3600;
        var slowMode = new Ringing(random.Uniform(13, 22), random.Uniform(0.08, 0.25), _tick);
        var fastMode = new Ringing(random.Uniform(24, 45), random.Uniform(0.05, 0.2), _tick);
        var slowPart = random.Uniform(0.2, 0.8);
        var white = random.Uniform(0.15, 0.5);
        var slow = random.Uniform(0.1, 0.4);
        var sampleSeconds = ticksPerSample * _tick;
        var memory = Math.Exp(-2 * Math.PI * random.Uniform(2, 15) * sampleSeconds);
        var (mains, mainsPhase) = (random.Uniform(0, 0.2), random.Uniform(0, 6.28));
        var (pump, pumpHz, pumpPhase) = (random.Uniform(0, 0.25), random.Uniform(18, 29), random.Uniform(0, 6.28));
        double colour = random.Normal(0, slow), wander = 0;
        var read = new float[load.Length / ticksPerSample];
        for (var tick = 0; tick < load.Length; tick++)
        {
            var felt = (slowPart * slowMode.Next(load[tick])) + ((1 - slowPart) * fastMode.Next(load[tick]));
            if (tick % ticksPerSample != 0 || tick / ticksPerSample >= read.Length)
                continue;
            var seconds = tick * _tick;
            colour = (memory * colour) + (Math.Sqrt(1 - (memory * memory)) * random.Normal(0, slow));
            wander += random.Normal(0, 0.02 * Math.Sqrt(sampleSeconds));
            var kg = (gain * felt) + zero + (drift * seconds) + wander + colour + random.Normal(0, white)
                + (mains * Math.Sin((2 * Math.PI * 50 * seconds) + mainsPhase)) + (pump * Math.Sin((2 * Math.PI * pumpHz * seconds) + pumpPhase));
            read[tick / ticksPerSample] = (float)(_platform.IntervalKg > 0 ? Math.Round(kg / _platform.IntervalKg) * _platform.IntervalKg : kg) + 0f;
        }

        return read;
    }

    /// <summary>A mode of a corner: spring, damper and mass, stepped with the new velocity so that it never gains energy.</summary>
    private sealed class Ringing(double hz, double damping, double tickSeconds)
    {
        private readonly double _w = 2 * Math.PI * hz * tickSeconds;
        private double _y, _v;

        public double Next(double load)
        {
            _v += _w * (_w * (load - _y) - (2 * damping * _v));
            return _y += _v;
        }
    }
}
