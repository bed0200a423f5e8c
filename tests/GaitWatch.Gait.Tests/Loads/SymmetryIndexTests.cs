using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// Symmetry index 100 (R - L) / (0.5 (R + L)): Robinson R.O. et al. 1987, J Manip Physiol Ther 10:172-176. Formed from the loads of a pair it
/// must be that of the loads that were laid on the plates.
/// </summary>
public class SymmetryIndexTests
{
    [Theory]
    [InlineData(0.272, 0.268, 0.236, 0.224)]
    [InlineData(0.30, 0.25, 0.20, 0.25)]
    [InlineData(0.25, 0.25, 0.27, 0.23)]
    public void Of_the_measured_loads_it_is_that_of_the_true_ones(double lf, double rf, double lh, double rh)
    {
        var cow = new HalfSineCow { Shares = new PerLeg<double>(lf, rf, lh, rh) };
        var legs = Assert.Single(Tape.Analyse(Tape.Walk(cow).Noisy(4)).Crossings).Legs;
        Assert.Equal(Index(lf, rf), Index(legs.Lf.LoadKg!.Value, legs.Rf.LoadKg!.Value), 1.0);
        Assert.Equal(Index(lh, rh), Index(legs.Lh.LoadKg!.Value, legs.Rh.LoadKg!.Value), 1.0);
    }

    /// <summary>By hand: left 100, right 120: 100 x 20 / 110 = 18.1818.</summary>
    [Fact]
    public void The_formula_by_hand() => Assert.Equal(18.1818, Index(100, 120), 1e-4);

    [Fact]
    public void On_simulated_walks_of_both_sources_it_is_near_the_true_one()
    {
        var analyser = new CrossingAnalyser(TwinPlate.Default, new GaitOptions());
        foreach (var source in new Func<CrossingKind, long, SimulatedPlatform?, SimulatedCrossing>[] { WalkGenerator.Of, SecondWalks.Of })
        {
            for (var seed = 300; seed < 330; seed++)
            {
                var crossing = source(CrossingKind.Steady, seed, null);
                if (crossing.Truth.Legs is not { } truth || truth.Values().Any(leg => leg.LoadKg is null) || crossing.Truth.Footfalls.Any(f => !f.IsWhole))
                    continue;
                var legs = Assert.Single(analyser.Analyse(Tape.Frames(crossing)).Crossings).Legs;
                Assert.Equal(Index(truth.Lh.LoadKg!.Value, truth.Rh.LoadKg!.Value), Index(legs.Lh.LoadKg!.Value, legs.Rh.LoadKg!.Value), 2.5);
                Assert.Equal(Index(truth.Lf.LoadKg!.Value, truth.Rf.LoadKg!.Value), Index(legs.Lf.LoadKg!.Value, legs.Rf.LoadKg!.Value), 2.5);
            }
        }
    }

    private static double Index(double left, double right) => 100 * (right - left) / (0.5 * (right + left));
}
