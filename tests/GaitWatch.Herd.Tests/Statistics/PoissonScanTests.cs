namespace GaitWatch.Herd.Tests;

public sealed class PoissonScanTests
{
    // Simulation, 200,000 runs a case (Reference/make_reference.py): within four of its standard errors and 2 % for the approximation.
    [Fact]
    public void The_probability_is_the_simulated_one()
    {
        foreach (var reference in ReferenceValues.Of("scan"))
        {
            var p = PoissonScan.PValue(
                reference.GetProperty("count").GetInt32(), reference.GetProperty("expectedInWindow").GetDouble(), reference.GetProperty("windows").GetDouble());
            var simulated = reference.GetProperty("p").GetDouble();
            Assert.Equal(simulated, p, 4 * reference.GetProperty("error").GetDouble() + 0.02 * simulated);
        }
    }

    [Fact]
    public void The_simple_cases_are_exact()
    {
        // One event anywhere: 1 - exp(-psi L). One window: the upper tail of the Poisson distribution, 1 - exp(-1)(1 + 1 + 1/2).
        Assert.Equal(1 - Math.Exp(-0.6), PoissonScan.PValue(1, 0.2, 3), 1e-12);
        Assert.Equal(1 - Math.Exp(-1) * 2.5, PoissonScan.PValue(3, 1, 1), 1e-12);
        Assert.Equal(1, PoissonScan.PValue(0, 1, 5));
    }

    [Fact]
    public void More_events_are_less_likely_and_a_longer_time_makes_them_more_likely()
    {
        var byCount = Enumerable.Range(1, 12).Select(count => PoissonScan.PValue(count, 1.1, 10)).ToArray();
        Assert.Equal(byCount.OrderDescending(), byCount);
        Assert.True(PoissonScan.PValue(5, 1.1, 20) > PoissonScan.PValue(5, 1.1, 10));
    }

    [Fact]
    public void What_makes_no_sense_is_refused()
    {
        Assert.StartsWith("Expected events in a window are above 0", Assert.Throws<ArgumentOutOfRangeException>(() => PoissonScan.PValue(3, 0, 5)).Message, StringComparison.Ordinal);
        Assert.StartsWith("The whole time is at least one window", Assert.Throws<ArgumentOutOfRangeException>(() => PoissonScan.PValue(3, 1, 0.5)).Message, StringComparison.Ordinal);
    }
}
