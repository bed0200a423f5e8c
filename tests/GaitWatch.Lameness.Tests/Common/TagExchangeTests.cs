using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.CommonMovement;

/// <summary>Two cows, one behind the other, under each other's tags.</summary>
public sealed class TagExchangeTests
{
    private const int From = 45;
    private static readonly SimulatedHerd _herd = new(new HerdSpec { Cows = 40, Days = 60, Seed = 31, EpisodesPer100CowYears = 0, SwappedTags = 0 });

    /// <summary>
    /// Of pairs of neighbours, each exchanged once, what is expected of the two next is as if nothing had been read of them: neither took in the other's passage. Where
    /// two cows are much alike nothing can tell, and nothing is lost; these differ in weight by 6 % or more.
    /// </summary>
    [Fact]
    public void Exchanged_passages_of_cows_that_differ_are_no_evidence()
    {
        var (exchanged, left, cows) = (_herd.Passages.ToList(), new HashSet<int>(), new Dictionary<string, DateTimeOffset>());
        for (var i = _herd.Passages.FindIndex(p => p.At > Histories.At(From)); cows.Count < 24; i++)
        {
            var (a, b) = (_herd.Passages[i], _herd.Passages[i + 1]);
            if (b.At - a.At > TimeSpan.FromMinutes(3) || cows.ContainsKey(a.Cow) || cows.ContainsKey(b.Cow)
                || Math.Abs(Math.Log(a.Passage.WeightKg!.Value / b.Passage.WeightKg!.Value)) < 0.06)
            {
                continue;
            }

            (exchanged[i], exchanged[i + 1]) = (a with { Cow = b.Cow }, b with { Cow = a.Cow });
            left.UnionWith([i, i + 1]);
            (cows[a.Cow], cows[b.Cow]) = (b.At, b.At);
            i += 12;
        }

        var (with, without) = (Histories.Fold(exchanged).Assessments, Histories.Fold(_herd.Passages.Where((_, i) => !left.Contains(i))).Assessments);
        var told = cows.Count(cow => Apart(Next(with, cow), Next(without, cow)) < 0.05);
        Assert.True(told >= 22, $"{told} of {cows.Count} passages were told to be another's");

        // The next passage settles the one before; the one after that shows what is expected then.
        static PassageAssessment Next(List<PassageAssessment> all, KeyValuePair<string, DateTimeOffset> cow) => all.Where(a => a.Cow == cow.Key && a.At > cow.Value).ElementAt(1);

        static double Apart(PassageAssessment one, PassageAssessment other) =>
            Legs.All.Max(leg => Math.Abs(one.ExpectedShare!.Value[leg] - other.ExpectedShare!.Value[leg]) / one.ShareSpread!.Value[leg]);
    }

    /// <summary>In a herd without exchanges hardly a passage is put to question.</summary>
    [Fact]
    public void Own_passages_are_left_alone()
    {
        var assessments = Histories.Fold(_herd.Passages).Assessments;
        var questioned = assessments.Count(a => a.Reasons.Contains(QualityReason.WrongCowSuspected));
        Assert.InRange(questioned, 0, assessments.Count / 500);
    }
}
