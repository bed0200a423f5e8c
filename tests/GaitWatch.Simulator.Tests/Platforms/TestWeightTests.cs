namespace GaitWatch.Simulator.Tests;

/// <summary>A weight at rest, held against the lever rule.</summary>
public class TestWeightTests
{
    [Fact]
    public void A_weight_is_carried_by_the_cells_as_a_lever_does_and_leaves_the_other_plate_alone()
    {
        var platform = SimulatedPlatform.Default with { IntervalKg = 0, Sensors = PlatformSensors.Perfect };
        // 100 kg at 0.6 m of 2.4 m: three quarters on the near cell.
        var samples = TestWeight.Readings(platform, 100, onLeft: true, 0.6, standsSeconds: 1, emptySeconds: 0.5, seed: 1);
        Assert.All(samples, cell => Assert.Equal(400, cell.Length));
        Assert.Equal([75f, 25f, 0f, 0f], samples.Select(cell => MathF.Round(cell[200], 3)));
        Assert.All(samples, cell => Assert.Equal((0f, 0f), (cell[50], cell[^1])));
        Assert.All(samples[0][101..299], kg => Assert.Equal(75, kg, 3));
    }

    [Fact]
    public void Gains_offsets_and_noise_are_the_sensors()
    {
        var platform = SimulatedPlatform.Default with { Sensors = new PlatformSensors { NoiseKg = 0.5, OffsetKg = [1, 2, 3, 4], Gain = [1, 1, 1, 0.98] } };
        var samples = TestWeight.Readings(platform, 100, onLeft: false, 1.2, standsSeconds: 10, emptySeconds: 0.5, seed: 2);
        double[] expected = [1, 2, 3 + 50, 4 + 49];
        Assert.All(Enumerable.Range(0, 4), cell => Assert.Equal(expected[cell], samples[cell][200..2000].Average(kg => (double)kg), 0.08));
    }
}
