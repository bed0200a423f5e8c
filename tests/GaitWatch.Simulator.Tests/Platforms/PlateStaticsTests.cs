namespace GaitWatch.Simulator.Tests;

public class PlateStaticsTests
{
    [Fact]
    public void Two_cells_share_a_load_by_the_lever_rule()
    {
        // By hand: 100 kg at 0.6 m on cells at 0 and 2.4 m: the far cell takes 0.6 / 2.4 = 25 kg, the near one 75 kg.
        var split = PlateStatics.Split([0, 2.4]);
        Assert.Equal(75, Cell(split[0], 100, 0.6), 1e-9);
        Assert.Equal(25, Cell(split[1], 100, 0.6), 1e-9);
    }

    [Fact]
    public void A_load_beyond_the_outer_cell_lifts_the_other()
    {
        // By hand: cells at 0.3 and 2.1 m, 90 kg at 2.3 m: moments about the first: 90 x 2.0 / 1.8 = 100 kg there, -10 kg here.
        var split = PlateStatics.Split([0.3, 2.1]);
        Assert.Equal(-10, Cell(split[0], 90, 2.3), 1e-9);
        Assert.Equal(100, Cell(split[1], 90, 2.3), 1e-9);
    }

    [Fact]
    public void Four_cells_of_equal_stiffness_share_linearly()
    {
        // By hand: cells at 0, 0.8, 1.6, 2.4 m (mean 1.2, sum of squares 3.2 m^2), 120 kg at 1.8 m:
        // 120 (1/4 + 0.6 (x - 1.2) / 3.2) = 3, 21, 39, 57 kg; they sum to 120 and their moments to 120 x 1.8 = 216 kg m.
        double[] x = [0, 0.8, 1.6, 2.4];
        var parts = PlateStatics.Split(x).Select(cell => Cell(cell, 120, 1.8)).ToArray();
        double[] byHand = [3, 21, 39, 57];
        for (var i = 0; i < 4; i++)
            Assert.Equal(byHand[i], parts[i], 1e-9);
        Assert.Equal(216, parts.Zip(x, (kg, at) => kg * at).Sum(), 1e-9);
    }

    [Fact]
    public void A_foot_half_over_the_edge_loads_the_plate_with_half_its_force_at_the_middle_of_that_half()
    {
        var loads = new PlateLoads(1, 0.001, 2.4);
        loads.Add(left: true, 0, 200, centre: 2.4, halfWidth: 0.06);
        Assert.Equal(100, loads.ForceKg(true)[0], 1e-9);
        Assert.Equal(100 * (2.4 - 0.03), loads.MomentKgMetres(true)[0], 1e-9);
        loads.Add(left: false, 0, 200, centre: 2.5, halfWidth: 0.06);
        Assert.Equal(0, loads.ForceKg(false)[0]);
    }

    [Theory]
    [InlineData(12, 0.1)]
    [InlineData(30, 0.3)]
    public void The_plate_bounces_like_a_damped_oscillator(double hz, double damping)
    {
        // Textbook step response of a second-order system: first overshoot exp(-pi d / sqrt(1 - d^2)) at t = pi / (w sqrt(1 - d^2)).
        const double tick = 1e-5;
        var bounce = new PlateBounce(hz, damping, tick);
        var root = Math.Sqrt(1 - damping * damping);
        var response = Enumerable.Range(0, (int)(3 / tick)).Select(_ => bounce.Next(1)).ToArray();
        Assert.Equal(1 + Math.Exp(-Math.PI * damping / root), response.Max(), 1e-5);
        Assert.Equal(0.5 / (hz * root), Array.IndexOf(response, response.Max()) * tick, 5e-5);
        Assert.Equal(1, response[^1], 1e-6);
    }

    private static double Cell((double PerLoad, double PerMoment) cell, double kg, double x) => cell.PerLoad * kg + cell.PerMoment * kg * x;
}
