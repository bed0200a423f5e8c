using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// How many feet carry her, over one stride on plates so long that all four are on them. Published durations (Tijssen M. et al. 2021, PLoS ONE 16(7):e0253479) were not at hand
/// as numbers, so they are held to what the feet truly did and to the arithmetic of a walk: the four stances together last as long as the stride times the mean
/// number of feet on the ground.
/// </summary>
public class SupportTests
{
    public static TheoryData<int> Sources => [0, 1, 2];

    [Theory]
    [MemberData(nameof(Sources))]
    public void On_two_three_and_four_feet_she_stands_as_long_as_she_truly_does(int source)
    {
        var platform = SimulatedPlatform.Of(6, 200, 3);
        var analyser = new CrossingAnalyser(Tape.Platform(platform), new GaitOptions());
        Func<CrossingKind, long, SimulatedPlatform?, SimulatedCrossing> of = source switch { 0 => WalkGenerator.Of, 1 => SecondWalks.Of, _ => ThirdWalks.Of };
        for (var seed = 1; seed <= 12; seed++)
        {
            var walk = of(CrossingKind.Steady, 4_000 + seed, platform);
            var crossing = Assert.Single(analyser.Analyse(Tape.Frames(walk)).Crossings);
            var (from, lasts) = (0.5 * (walk.Truth.FirstContactSeconds + walk.Truth.LastLiftSeconds) - (0.5 * walk.Truth.StrideSeconds!.Value), walk.Truth.StrideSeconds.Value);
            var truly = On(walk.Truth.Footfalls.Select(foot => (foot.ContactSeconds, foot.LiftSeconds)), from, lasts);
            var found = On(crossing.Footfalls.Select(foot => (foot.Contact.Seconds(), foot.Lift.Seconds())), from, lasts);
            Assert.Equal(lasts, found[2] + found[3] + found[4], 1e-6);
            // Each of the eight contacts and lifts of a stride is off by some 10 ms, to one side.
            for (var feet = 2; feet <= 4; feet++)
                Assert.Equal(truly[feet], found[feet], 0.12);
            var meanFeet = ((2 * found[2]) + (3 * found[3]) + (4 * found[4])) / lasts;
            Assert.Equal(Legs.All.Sum(leg => crossing.Legs[leg].StanceSeconds!.Value) / crossing.StrideSeconds!.Value, meanFeet, 0.08);
        }
    }

    /// <summary>How long 0, 1, .. 4 feet are down between two instants, s.</summary>
    private static double[] On(IEnumerable<(double Contact, double Lift)> feet, double from, double lasts)
    {
        const int steps = 4000;
        var stances = feet.ToArray();
        var on = new double[5];
        for (var k = 0; k < steps; k++)
        {
            var at = from + (lasts * (k + 0.5) / steps);
            on[stances.Count(foot => at >= foot.Contact && at < foot.Lift)] += lasts / steps;
        }

        return on;
    }
}
