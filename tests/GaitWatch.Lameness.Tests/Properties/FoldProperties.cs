using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Lameness.Tests.Simulated;

namespace GaitWatch.Lameness.Tests.Properties;

public sealed class FoldProperties
{
    private static readonly SimulatedHerd _herd = Histories.WithOneLameCow();

    [Fact]
    public void The_lame_cow_is_found_and_nothing_is_told_of_the_future()
    {
        var (changes, assessments, _) = Histories.Fold(_herd.Passages);
        Assert.Contains(changes, c => c is { Kind: AlertChangeKind.Raised, Alert: { Cow: "1", Leg: Leg.Rh } });
        foreach (var cut in new[] { 0.3, 0.75, 0.9 })
        {
            var some = (int)(cut * _herd.Passages.Count);
            var (before, _, _) = Histories.Fold(_herd.Passages.Take(some));
            Assert.Equal(changes.Take(before.Count), before);
            Assert.True(changes.Skip(before.Count).All(c => c.At >= _herd.Passages[some - 1].At));
        }

        Assert.Equal(_herd.Passages.Count, assessments.Count);
    }

    [Fact]
    public void A_mirror_shows_the_mirrored_alerts()
    {
        var (changes, _, _) = Histories.Fold(_herd.Passages);
        var (mirrored, _, _) = Histories.Fold(_herd.Passages.Select(p => Histories.Map(p, legs => legs.Mirrored())));
        Assert.NotEmpty(changes);
        Assert.Equal(changes.Select(c => (c.At, c.Kind, c.Alert.Cow, c.Alert.Leg)), mirrored.Select(c => (c.At, c.Kind, c.Alert.Cow, c.Alert.Leg.Opposite())));
        foreach (var (one, other) in changes.Zip(mirrored))
            Assert.Equal(one.Alert.LoadDropPercent, other.Alert.LoadDropPercent, 1e-6);
    }

    [Fact]
    public void A_scale_that_reads_a_quarter_more_changes_nothing()
    {
        var (changes, assessments, _) = Histories.Fold(_herd.Passages);
        var (scaled, scaledAssessments, _) = Histories.Fold(_herd.Passages.Select(p => Histories.Map(p, legs => legs, 1.25)));
        Assert.Equal(changes, scaled);
        Assert.Equal(assessments.Select(a => a.OneLegEvidence), scaledAssessments.Select(a => a.OneLegEvidence));
    }

    [Fact]
    public void A_cow_that_never_changes_raises_nothing() => Gen.Select(Gen.Double[0.2, 0.3], Gen.Double[0.2, 0.3], Gen.Double[0.2, 0.3]).Sample(
        (lf, rf, lh) =>
        {
            var shares = new PerLeg<double>(lf, rf, lh, 1 - lf - rf - lh);
            var passages = Enumerable.Range(0, 200).Select(i => Passage($"p{i:000}", Histories.At(i / 2.0), shares));
            Assert.Empty(Histories.Fold(passages).Changes);
        },
        iter: 20);

    /// <summary>
    /// One sound cow more moves what is expected of any other by a tenth of a passage's standard deviation at most, for as long as both histories take the same steps: an alert or a platform's trouble, which concern the herd, a doubt whose a crossing was, which concerns
    /// a cow. One that comes in only one history parts them, and then the law does not hold: in an earlier state about one passage in two hundred lay beyond, and in a herd of sixty (seed 5, 70 days) it is 0.38 over all passages. Of forty herds of 51 and 60 (seeds 700 to 739)
    /// fifteen had parted before day 45; in the other 25 it was 0.08 at most until they did, over 410,000 shares of legs. These five are of the ones that part late.
    /// </summary>
    [Theory]
    [InlineData(716, 51)]
    [InlineData(718, 51)]
    [InlineData(732, 51)]
    [InlineData(737, 60)]
    [InlineData(739, 60)]
    public void Until_the_histories_part_a_sound_cow_more_hardly_moves_another(int seed, int cows)
    {
        var herd = new SimulatedHerd(new HerdSpec { Cows = cows, Days = 110, Seed = seed, EpisodesPer100CowYears = seed % 4 < 2 ? 0 : 60, SwappedTags = 0 });
        var added = $"{cows}";
        var (with, stepsWith) = Told(herd.Passages, added);
        var (without, stepsWithout) = Told(herd.Passages.Where(p => p.Cow != added), added);
        Assert.Equal(with.Keys, without.Keys);
        var onlyInOne = stepsWith.Except(stepsWithout).Concat(stepsWithout.Except(stepsWith)).ToLookup(step => step.Of, step => step.At);
        DateTimeOffset Parted(string of) => onlyInOne[of].DefaultIfEmpty(DateTimeOffset.MaxValue).Min();
        var apart = new List<double>();
        foreach (var (one, other) in without.Values.Select(one => (one, with[one.PassageId])))
        {
            if (one.At > Histories.At(45) && one.At < Parted(Herd) && one.At < Parted(one.Cow) && one.Baseline == BaselineState.Watching && one.Reasons.IsEmpty)
                apart.AddRange(Legs.All.Select(leg => Math.Abs(one.ExpectedShare!.Value[leg] - other.ExpectedShare!.Value[leg]) / one.ShareSpread!.Value[leg]));
        }

        Assert.True(apart.Count > 10_000, $"{apart.Count} shares until {Parted(Herd)}");
        Assert.InRange(apart.Max(), 0.001, 0.1);
    }

    private const string Herd = "";

    /// <summary>What was told of every cow but one, and every step taken: alerts of others and a platform in trouble, which concern the herd, and doubts, which concern a cow.</summary>
    private static (OrderedDictionary<string, PassageAssessment> Assessments, HashSet<(string Of, DateTimeOffset At, string What)> Steps) Told(IEnumerable<PassageInput> passages, string but)
    {
        var fold = new HerdFold(new LamenessOptions());
        var (told, steps) = (new OrderedDictionary<string, PassageAssessment>(), new HashSet<(string, DateTimeOffset, string)>());
        foreach (var passage in passages)
        {
            var step = fold.Fold(passage);
            if (passage.Cow == but)
                continue;
            told.Add(passage.Passage.Id, step.Assessment!);
            foreach (var change in step.Changes.Where(change => change.Kind != AlertChangeKind.Updated))
                steps.Add((Herd, change.At, $"{change.Alert.Cow} {change.Kind} {change.Alert.Pattern} {change.Alert.Leg}"));
            foreach (var reason in step.Assessment!.Reasons)
                steps.Add((passage.Cow, passage.At, $"{reason}"));
            if (fold.Shifts.Any(shift => shift.IsTrouble))
                steps.Add((Herd, passage.At, "trouble"));
        }

        return (told, steps);
    }

    [Fact]
    public void Saving_and_restoring_anywhere_changes_nothing()
    {
        var (changes, assessments, whole) = Histories.Fold(_herd.Passages);
        foreach (var cut in new[] { 0, 1, 777, _herd.Passages.Count / 2, (int)(_herd.Passages.Count * 0.8), _herd.Passages.Count })
        {
            var (head, headAssessments, fold) = Histories.Fold(_herd.Passages.Take(cut));
            var restored = HerdFold.Restore(fold.Options, fold.Save());
            Assert.Equal(fold.Head, restored.Head);
            Assert.Equal(fold.OpenAlerts.ToArray(), restored.OpenAlerts.ToArray());
            Assert.Equal(fold.Shifts.ToArray(), restored.Shifts.ToArray());
            foreach (var passage in _herd.Passages.Skip(cut))
            {
                var step = restored.Fold(passage);
                head.AddRange(step.Changes);
                headAssessments.Add(step.Assessment!);
            }

            Assert.Equal(changes, head);
            Assert.Equal(assessments.Select(a => a with { Reasons = [] }), headAssessments.Select(a => a with { Reasons = [] }));
            Assert.Equal(whole.Save(), restored.Save());
        }
    }

    [Fact]
    public void A_saved_cow_is_small()
    {
        var (_, _, fold) = Histories.Fold(_herd.Passages);
        var herdOnly = new HerdFold(new LamenessOptions()).Save().Length;
        Assert.InRange((fold.Save().Length - herdOnly) / _herd.Spec.Cows, 500, 4096);
    }

    [Fact]
    public void Bytes_that_are_no_state_are_refused()
    {
        var saved = Histories.Fold(_herd.Passages.Take(500)).Fold.Save();
        var options = new LamenessOptions();
        Assert.Contains("do not begin", Assert.Throws<FormatException>(() => HerdFold.Restore(options, "something else"u8)).Message, StringComparison.Ordinal);
        Assert.Throws<FormatException>(() => HerdFold.Restore(options, saved.AsSpan(0, saved.Length / 2)));
        Assert.Throws<FormatException>(() => HerdFold.Restore(options, []));
        Assert.Contains("left over", Assert.Throws<FormatException>(() => HerdFold.Restore(options, [.. saved, 0])).Message, StringComparison.Ordinal);
        Assert.Contains("budget of 1 ", Assert.Throws<FormatException>(() => HerdFold.Restore(options with { FalseAlertsPer100CowsPerWeek = 2 }, saved)).Message, StringComparison.Ordinal);
        saved[4]++;
        Assert.Contains("version", Assert.Throws<FormatException>(() => HerdFold.Restore(options, saved)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_lies_before_the_head_is_refused()
    {
        var fold = new HerdFold(new LamenessOptions());
        fold.Fold(_herd.Passages[1]);
        var e = Assert.Throws<InvalidOperationException>(() => fold.Fold(_herd.Passages[0]));
        Assert.Contains("checkpoint", e.Message, StringComparison.Ordinal);
        Assert.Equal(_herd.Passages[1].At, fold.Head);
    }

    private static PassageInput Passage(string id, DateTimeOffset at, PerLeg<double> shares) => new("1", new Passage
    {
        Id = id, Platform = "exit", StartedAt = at, EndedAt = at, WeightKg = 640,
        Legs = shares.Select(s => new LegLoad(640 * s, s, null, null, null, 1)),
    });
}
