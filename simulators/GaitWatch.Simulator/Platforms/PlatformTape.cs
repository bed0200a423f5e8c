namespace GaitWatch.Simulator;

/// <summary>What a platform's cells read over a longer time: crossings and what else happens, one after another, and zeros that do as they please meanwhile.</summary>
/// <param name="platform">The platform.</param>
/// <param name="seed">Draws the noise of empty stretches.</param>
/// <param name="noiseKg">Its standard deviation, kg.</param>
public sealed class PlatformTape(SimulatedPlatform platform, long seed, double noiseKg = 0.5)
{
    private readonly SeededRandom _random = new(seed, 70);
    private readonly List<float>[] _samples = [.. platform.Cells.Select(_ => new List<float>())];

    /// <summary>How long it is, s.</summary>
    public double Seconds => _samples[0].Count / platform.Hz;

    /// <summary>Appends a crossing of this platform.</summary>
    public PlatformTape Cross(SimulatedCrossing crossing)
    {
        for (var cell = 0; cell < _samples.Length; cell++)
            _samples[cell].AddRange(crossing.Samples[cell]);
        return this;
    }

    /// <summary>Appends an empty platform.</summary>
    public PlatformTape Empty(double seconds) => Load(seconds, _ => (0, 0));

    /// <summary>Appends a scraper that is pushed over both plates and weighs some way on them (amounts invented).</summary>
    public PlatformTape Scrape(double kg, double metresPerSecond) =>
        Load(platform.PlateLengthMetres / metresPerSecond, seconds => (0.5 * kg * (1 + (0.3 * Math.Sin(9 * seconds))), metresPerSecond * seconds));

    /// <summary>What the cells send.</summary>
    /// <param name="zeroKg">The zero of a cell (its place in the platform's order) at a time, kg.</param>
    public float[][] Samples(Func<int, double, double> zeroKg) =>
    [
        .. _samples.Select((kept, cell) => kept.Select((kg, n) => (float)(Math.Round((kg + zeroKg(cell, n / platform.Hz)) / platform.IntervalKg) * platform.IntervalKg) + 0f).ToArray()),
    ];

    private PlatformTape Load(double seconds, Func<double, (double Kg, double X)> onEachPlate)
    {
        AddTo(true);
        AddTo(false);
        return this;

        void AddTo(bool left)
        {
            int[] under = [.. Enumerable.Range(0, _samples.Length).Where(cell => platform.Cells[cell].IsLeft == left)];
            foreach (var (cell, (perLoad, perMoment)) in under.Zip(PlateStatics.Split([.. under.Select(cell => platform.Cells[cell].X)])))
            {
                for (var n = 0; n < (int)(seconds * platform.Hz); n++)
                {
                    var (kg, x) = onEachPlate(n / platform.Hz);
                    _samples[cell].Add((float)((perLoad * kg) + (perMoment * kg * x) + _random.Normal(0, noiseKg)));
                }
            }
        }
    }
}
