using GaitWatch.Simulator;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// The force curves that come out of the cells, after filter and parting, against Scott G.B. 1988, Vet Rec 123:245-248: in front one peak about half way through the
/// stance, at most about 60 % of body weight; behind two, at about 1/4 and 3/4, the second slightly smaller, about 50 %. That the walks have these is held by the
/// simulator's tests; here that the analysis neither loses nor makes a peak.
/// </summary>
public class ForceCurveTests
{
    public static TheoryData<int> Sources => [0, 1, 2];

    [Theory]
    [MemberData(nameof(Sources))]
    public void Of_fore_and_hind_feet_have_the_published_peaks(int source)
    {
        var (fore, hind) = (new List<(double Weight, List<(double Place, double Kg)> Peaks)>(), new List<(double Weight, List<(double Place, double Kg)> Peaks)>());
        foreach (var crossing in Crossings(source))
        {
            foreach (var footfall in crossing.Footfalls.Where(footfall => footfall.IsWhole))
                (footfall.Leg.IsFore() ? fore : hind).Add((crossing.WeightKg!.Value, Peaks(footfall)));
        }

        Assert.InRange(fore.Count, 80, 1000);
        // A foot in eight is sore or shares its spot with another for long: nine in ten are held to the shape.
        Assert.InRange(fore.Count(foot => foot.Peaks.Count == 1 && foot.Peaks[0].Place is > 0.38 and < 0.62), 0.9 * fore.Count, fore.Count);
        Assert.InRange(hind.Count(foot => foot.Peaks.Count == 2 && foot.Peaks[0].Place is > 0.17 and < 0.36 && foot.Peaks[1].Place is > 0.64 and < 0.83), 0.9 * hind.Count, hind.Count);
        Assert.InRange(fore.Average(foot => foot.Peaks.Max(peak => peak.Kg) / foot.Weight), 0.52, 0.61);
        Assert.InRange(hind.Average(foot => foot.Peaks.Max(peak => peak.Kg) / foot.Weight), 0.44, 0.53);
        Assert.InRange(hind.Where(foot => foot.Peaks.Count == 2).Average(foot => foot.Peaks[1].Kg / foot.Peaks[0].Kg), 0.9, 1);
    }

    private static IEnumerable<Crossing> Crossings(int source)
    {
        var analyser = new CrossingAnalyser(TwinPlate.Default, new GaitOptions());
        Func<CrossingKind, long, SimulatedPlatform?, SimulatedCrossing> of = source switch { 0 => WalkGenerator.Of, 1 => SecondWalks.Of, _ => ThirdWalks.Of };
        return Enumerable.Range(1, 30).Select(seed => Assert.Single(analyser.Analyse(Tape.Frames(of(CrossingKind.Steady, 3_000 + seed, null))).Crossings))
            .Where(crossing => crossing.Reasons.IsEmpty);
    }

    /// <summary>Peaks that stand out from the dips beside them by a fiftieth of the highest.</summary>
    private static List<(double Place, double Kg)> Peaks(Footfall footfall)
    {
        var curve = footfall.CurveKg;
        var least = 0.02 * curve.Max();
        var peaks = new List<(double Place, double Kg)>();
        var (top, low, rising) = (0, 0, true);
        for (var i = 1; i < curve.Length; i++)
        {
            if (rising && curve[i] > curve[top])
                top = i;
            if (!rising && curve[i] < curve[low])
                low = i;
            if (rising && curve[top] - curve[i] > least)
            {
                peaks.Add(((top + 0.5) / curve.Length, curve[top]));
                (rising, low) = (false, i);
            }
            else if (!rising && curve[i] - curve[low] > least)
            {
                (rising, top) = (true, i);
            }
        }

        return peaks;
    }
}
