namespace GaitWatch.Gait;

/// <summary>How long a number of samples lasts.</summary>
internal static class SampleTicks
{
    /// <summary>Ticks of <paramref name="samples"/> at <paramref name="hz"/>.</summary>
    public static long Of(double samples, double hz) => (long)Math.Round(samples / hz * TimeSpan.TicksPerSecond);
}
