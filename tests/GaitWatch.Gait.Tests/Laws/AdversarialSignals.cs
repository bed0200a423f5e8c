using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>Recordings that no walk gives, made to be hard: whatever they hold, the analysis must stay sane and quick. The benchmarks time the same.</summary>
internal static class AdversarialSignals
{
    /// <summary>One recording.</summary>
    /// <param name="Name">What it is.</param>
    /// <param name="Hz">Sampling rate, Hz.</param>
    /// <param name="SamplesKg">For each of four cells, l0 l1 r0 r1, its readings, kg; empty plate at both ends.</param>
    internal sealed record Signal(string Name, double Hz, float[][] SamplesKg)
    {
        /// <summary>How long it lasts, s.</summary>
        public double Seconds => SamplesKg[0].Length / Hz;
    }

    /// <summary>Those of a crossing's length: six seconds of load.</summary>
    public static IEnumerable<Signal> OfACrossing()
    {
        foreach (var hz in new[] { 200.0, 1000 })
        {
            yield return Make("white noise to 400 kg", hz, 6, 1, (random, _, _) => random.Uniform(0, 400));
            yield return Make("white noise about zero, 200 kg either way", hz, 6, 2, (random, _, _) => random.Uniform(-200, 200));
            yield return Make("a step at every sample", hz, 6, 3, (_, n, cell) => (n + cell) % 2 * 300);
            yield return Make("square waves of 5 Hz, cells out of step", hz, 6, 4, (_, n, cell) => (int)((n / hz * 10) + (0.5 * cell)) % 2 * 250);
            yield return Make("square waves of 1 Hz", hz, 6, 5, (_, n, cell) => (int)((n / hz * 2) + (0.5 * cell)) % 2 * 250);
            yield return Make("a chirp from 0.3 to 20 Hz", hz, 6, 6, (_, n, cell) => 150 * (1 + Math.Sin((2 * Math.PI * n / hz * (0.3 + (n / hz * 1.6))) + cell)));
            yield return Make("the largest readings taken, either sign by chance", hz, 6, 7, (random, _, _) => random.Chance(0.5) ? 20_000 : -20_000);
            yield return Make("spikes of 20,000 kg on 150 kg", hz, 6, 8, (random, _, _) => random.Chance(0.02) ? 20_000 : 150);
            yield return Make("steps of 0.1 kg about the least load", hz, 6, 9, (random, _, _) => 1.75 + (0.1 * random.Below(3)));
            yield return Make("a random walk", hz, 6, 10, Wandering(hz));
            yield return Make("footfalls of 90 ms, hundreds", hz, 6, 11, (_, n, cell) => 300 * Math.Pow(Math.Max(0, Math.Sin((2 * Math.PI * n / hz / 0.09) + cell)), 2));
            yield return Make("one plate loaded, the other noise", hz, 6, 12, (random, n, cell) => cell < 2 ? 150 + (20 * Math.Sin(n / hz)) : random.Uniform(-3, 3));
        }
    }

    /// <summary>A herd without a gap between the cows: two hundred steps on each plate, then empty.</summary>
    public static Signal FootfallsWithoutEnd(double hz = 200)
    {
        // Feet half a second apart on each plate, from the entry to the exit and again.
        return Make("200 footfalls a plate without a gap", hz, 110, 13, (_, n, cell) =>
        {
            var t = (n / hz) + (cell < 2 ? 0 : 0.27);
            return Foot(t, 0) + Foot(t, 0.55);

            double Foot(double at, double late)
            {
                var u = (at - late) / 1.1;
                if (u < 0)
                    return 0;
                var x = (u + (late > 0 ? 0.4 : 0)) % 3 / 3;
                var kg = 280 * Math.Sin(Math.PI * Math.Min(1, u % 1 / 0.75));
                return kg * (cell % 2 == 0 ? 1 - x : x);
            }
        });
    }

    /// <summary>She stands there for an hour, shifting from side to side.</summary>
    public static Signal AnHourStanding(double hz = 200) => Make("an hour standing", hz, 3600, 14, (random, n, cell) =>
        160 + ((cell < 2 ? 30 : -30) * Math.Sin(0.7 * n / hz)) + random.Uniform(-1, 1));

    private static Func<SeededRandom, int, int, double> Wandering(double hz)
    {
        var at = new double[4];
        return (random, _, cell) => at[cell] = Math.Clamp(at[cell] + random.Normal(0, 120 / Math.Sqrt(hz)), -50, 500);
    }

    private static Signal Make(string name, double hz, double loadedSeconds, long seed, Func<SeededRandom, int, int, double> kg)
    {
        var random = new SeededRandom(seed, 80);
        var (empty, loaded) = ((int)hz, (int)(loadedSeconds * hz));
        float[][] samples = [.. Enumerable.Range(0, 4).Select(_ => new float[loaded + (2 * empty)])];
        for (var n = 0; n < samples[0].Length; n++)
        {
            for (var cell = 0; cell < 4; cell++)
                samples[cell][n] = (float)(random.Uniform(-0.5, 0.5) + (n >= empty && n < empty + loaded ? kg(random, n - empty, cell) : 0));
        }

        return new(name, hz, samples);
    }
}
