namespace GaitWatch.Simulator;

/// <summary>From the load and moment on each plate to what the cells send.</summary>
internal static class CellReadings
{
    /// <summary>Readings of every cell, kg, one in <paramref name="ticksPerSample"/> ticks.</summary>
    public static float[][] Of(SimulatedPlatform platform, PlatformSensors sensors, PlateLoads loads, int ticksPerSample, SeededRandom random)
    {
        var samples = loads.Ticks / ticksPerSample;
        var readings = platform.Cells.Select(_ => new float[samples]).ToArray();
        foreach (var left in new[] { true, false })
        {
            var cells = Enumerable.Range(0, platform.Cells.Length).Where(i => platform.Cells[i].IsLeft == left).ToArray();
            var split = PlateStatics.Split([.. cells.Select(i => platform.Cells[i].X)]);
            var (force, moment) = (Felt(loads.ForceKg(left), sensors, loads.TickSeconds), Felt(loads.MomentKgMetres(left), sensors, loads.TickSeconds));
            for (var c = 0; c < cells.Length; c++)
            {
                var cell = cells[c];
                var gain = sensors.Gain.IsDefaultOrEmpty ? 1 : sensors.Gain[cell];
                var offset = sensors.OffsetKg.IsDefaultOrEmpty ? 0 : sensors.OffsetKg[cell];
                var driftPerSample = sensors.DriftKgPerHour.IsDefaultOrEmpty ? 0 : sensors.DriftKgPerHour[cell] / 3600 / platform.Hz;
                for (var n = 0; n < samples; n++)
                {
                    var tick = n * ticksPerSample;
                    var load = gain * (split[c].PerLoad * force[tick] + split[c].PerMoment * moment[tick]);
                    var read = load + offset + driftPerSample * n + (sensors.NoiseKg > 0 ? random.Normal(0, sensors.NoiseKg) : 0);
                    // Adding zero turns a rounded -0 into 0: no scale shows a minus before nothing.
                    readings[cell][n] = (float)(platform.IntervalKg > 0 ? Math.Round(read / platform.IntervalKg) * platform.IntervalKg : read) + 0f;
                }
            }
        }

        return readings;
    }

    private static double[] Felt(double[] load, PlatformSensors sensors, double tickSeconds)
    {
        if (sensors.RingHz <= 0)
            return load;
        var bounce = new PlateBounce(sensors.RingHz, sensors.RingDamping, tickSeconds);
        return Array.ConvertAll(load, bounce.Next);
    }
}
