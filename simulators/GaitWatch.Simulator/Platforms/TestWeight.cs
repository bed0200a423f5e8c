namespace GaitWatch.Simulator;

/// <summary>A weight that stands still on a plate, as in a check of the platform with a test weight.</summary>
public static class TestWeight
{
    /// <summary>Readings of every cell, kg: empty, then the weight set down at once, then empty again.</summary>
    /// <param name="platform">The platform; its sensors, if any are set, else ones drawn from the seed.</param>
    /// <param name="kg">The weight, kg; 0 for a plate that stays empty.</param>
    /// <param name="onLeft">Whether it stands on the left plate.</param>
    /// <param name="x">Where its middle stands, metres from the entry edge.</param>
    /// <param name="standsSeconds">How long it stands, s.</param>
    /// <param name="emptySeconds">How long the plate is empty before and after, s.</param>
    /// <param name="seed">Draws the noise.</param>
    public static float[][] Readings(SimulatedPlatform platform, double kg, bool onLeft, double x, double standsSeconds, double emptySeconds, long seed)
    {
        var random = new SeededRandom(seed, 60);
        var sensors = platform.Sensors ?? PlatformSensors.Draw(random, platform.Cells.Length);
        var ticksPerSample = (int)Math.Ceiling(1000 / platform.Hz - 1e-9);
        var tick = 1 / (platform.Hz * ticksPerSample);
        var samples = (int)Math.Round((standsSeconds + 2 * emptySeconds) * platform.Hz);
        var loads = new PlateLoads(samples * ticksPerSample, tick, platform.PlateLengthMetres);
        for (var t = (int)(emptySeconds / tick); t < (int)((emptySeconds + standsSeconds) / tick); t++)
            loads.Add(onLeft, t, kg, x, HalfWidthMetres);
        return CellReadings.Of(platform, sensors, loads, ticksPerSample, random);
    }

    // A block of iron about as wide as a hand.
    private const double HalfWidthMetres = 0.05;
}
