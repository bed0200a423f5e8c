using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>What is not one cow walking over at her own pace is never accepted, and mostly called by its right name.</summary>
public class BadCrossingTests
{
    private const int Crossings = 100;

    public static TheoryData<CrossingKind> Kinds => [.. CrossingKinds.Bad];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Never_accepted_and_called_by_its_name(CrossingKind kind)
    {
        var analyser = new CrossingAnalyser(TwinPlate.Default, new GaitOptions());
        var named = 0;
        for (long seed = 800_001; seed <= 800_000 + Crossings; seed++)
        {
            var found = analyser.Analyse(Tape.Frames(WalkGenerator.Of(kind, seed))).Crossings;
            Assert.All(found, crossing => Assert.False(crossing.Reasons.IsEmpty, $"{kind} with seed {seed} was accepted"));
            if (found.Length > 0 && found[0].Reasons[0].WireName() == kind.Reason())
                named++;
        }

        Assert.InRange(named, 0.95 * Crossings, Crossings);
    }
}
