namespace GaitWatch.Simulator;

/// <summary>
/// From what a cell feels to what its converter sends: gain, a bend of the line, creep, the mean over the time between two samples, white and 1/f noise, a gate
/// that slams now and then. All figures are invented, order of magnitude.
/// </summary>
internal sealed class ConverterChain
{
    // A sum of forgetful processes, each ten times slower than the one before, has about as much power in each decade: 1/f.
    private static readonly double[] s_memorySeconds = [0.02, 0.2, 2];

    private readonly SimulatedPlatform _platform;
    private readonly double _tick;
    private readonly (double Seconds, double Kg, double Hz)? _slam;

    public ConverterChain(SeededRandom random, SimulatedPlatform platform, double tickSeconds, double lastsSeconds)
    {
        (_platform, _tick) = (platform, tickSeconds);
        if (random.Chance(0.15))
            _slam = (random.Uniform(0, lastsSeconds), random.Uniform(0.5, 3), random.Uniform(22, 45));
    }

    /// <summary>What a cell sends.</summary>
    public float[] Read(double[] felt, SeededRandom random, int ticksPerSample)
    {
        var gain = 1 + random.Normal(0, 0.0025, -0.005, 0.005);
        var bend = random.Uniform(-0.0003, 0.0003);
        var (creep, creepSeconds) = (random.Uniform(0, 0.0004), random.Uniform(3, 20));
        var zero = random.Uniform(-15, 15);
        var drift = random.Normal(0, 1.5, -5, 5) / 3600;
        var white = random.Uniform(0.15, 0.5);
        var slow = random.Uniform(0.05, 0.25);
        var sampleSeconds = ticksPerSample * _tick;
        var keeps = Array.ConvertAll(s_memorySeconds, seconds => Math.Exp(-sampleSeconds / seconds));
        var noise = Array.ConvertAll(keeps, _ => random.Normal(0, slow));
        var crept = 0.0;
        var read = new float[felt.Length / ticksPerSample];
        for (var n = 0; n < read.Length; n++)
        {
            var sum = 0.0;
            for (var tick = n * ticksPerSample; tick < (n + 1) * ticksPerSample; tick++)
            {
                crept += _tick / creepSeconds * (felt[tick] - crept);
                sum += felt[tick] * (1 + (bend * felt[tick] / 500)) + (creep * crept);
            }

            for (var k = 0; k < keeps.Length; k++)
                noise[k] = (keeps[k] * noise[k]) + (Math.Sqrt(1 - (keeps[k] * keeps[k])) * random.Normal(0, slow));
            var kg = (gain * sum / ticksPerSample) + zero + (drift * n * sampleSeconds) + noise.Sum() + random.Normal(0, white) + Slam(n * sampleSeconds);
            read[n] = (float)(_platform.IntervalKg > 0 ? Math.Round(kg / _platform.IntervalKg) * _platform.IntervalKg : kg) + 0f;
        }

        return read;
    }

    private double Slam(double seconds) => _slam is { } slam && seconds >= slam.Seconds
        ? slam.Kg * Math.Exp((slam.Seconds - seconds) / 0.08) * Math.Sin(2 * Math.PI * slam.Hz * (seconds - slam.Seconds))
        : 0;
}
