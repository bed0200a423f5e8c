using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// The cut-off by residual analysis (Winter D.A. 2009, Biomechanics and Motor Control of Human Movement, 4th ed., section 3.4.4.3, from
/// memory): the residual between raw and filtered signal falls with the cut-off; where only noise is left it falls along a straight line,
/// and the cut-off is where the residual equals that line's value at 0 Hz.
/// </summary>
public class LowPassResidualTests
{
    [Fact]
    public void The_cut_off_lies_where_the_residual_is_noise()
    {
        var chosen = new List<double>();
        for (var seed = 1; seed <= 20; seed++)
        {
            var platform = SimulatedPlatform.Default with { Sensors = new PlatformSensors { NoiseKg = 0.5, RingHz = 0 } };
            var crossing = WalkGenerator.Of(seed % 2 == 0 ? CrossingKind.Varied : CrossingKind.Steady, seed, platform);
            // Both cells of the left plate; offsets are zero here.
            var force = crossing.Samples[0].Zip(crossing.Samples[1], (near, far) => (double)near + far).ToArray();
            chosen.Add(CutOff(force, crossing.Hz));
        }

        chosen.Sort();
        var median = 0.5 * (chosen[9] + chosen[10]);
        // A cut-off a little above loses nothing of the force; one below would round the contacts.
        Assert.InRange(LowPass.CutOffHz, 0.8 * median, 1.6 * median);
    }

    private static double CutOff(double[] signal, double hz)
    {
        var cutOffs = Enumerable.Range(2, 49).Select(frequency => (double)frequency).ToArray();
        var residuals = cutOffs.Select(cutOff => Residual(signal, new LowPass(hz, cutOff).Apply(signal))).ToArray();
        // The straight line through the residuals from 30 Hz on.
        var noise = cutOffs.Zip(residuals).Where(point => point.First >= 30).ToArray();
        var meanX = noise.Average(point => point.First);
        var meanY = noise.Average(point => point.Second);
        var slope = noise.Sum(point => (point.First - meanX) * (point.Second - meanY)) / noise.Sum(point => Math.Pow(point.First - meanX, 2));
        var atZero = meanY - (slope * meanX);
        return cutOffs[Array.FindIndex(residuals, residual => residual <= atZero)];
    }

    private static double Residual(double[] raw, double[] filtered) =>
        Math.Sqrt(raw.Zip(filtered, (a, b) => (a - b) * (a - b)).Average());
}
