using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>What is not one cow walking over at her own pace is never accepted, and mostly called by its right name.</summary>
public class BadCrossingTests
{
    private const int Crossings = 100;

    public static TheoryData<CrossingKind> Kinds => [.. CrossingKinds.Bad];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Never_accepted_and_called_by_its_name(CrossingKind kind) => Hold(kind, WalkGenerator.Of, 0.95);

    /// <summary>A short step back of the second source is now and then called by another name.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Nor_is_one_of_the_second_source(CrossingKind kind) => Hold(kind, SecondWalks.Of, kind == CrossingKind.BacksAStep ? 0.75 : 0.93);

    private static void Hold(CrossingKind kind, Func<CrossingKind, long, SimulatedPlatform?, SimulatedCrossing> source, double leastNamed)
    {
        var analyser = new CrossingAnalyser(TwinPlate.Default, new GaitOptions());
        var named = 0;
        for (long seed = 800_001; seed <= 800_000 + Crossings; seed++)
        {
            var found = analyser.Analyse(Tape.Frames(source(kind, seed, null))).Crossings;
            Assert.All(found, crossing => Assert.False(crossing.Reasons.IsEmpty, $"{kind} with seed {seed} was accepted"));
            if (found.Length > 0 && found[0].Reasons[0].WireName() == kind.Reason())
                named++;
        }

        Assert.InRange(named, leastNamed * Crossings, Crossings);
    }
}
