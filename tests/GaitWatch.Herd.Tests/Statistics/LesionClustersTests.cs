using CsCheck;
using GaitWatch.Gait;

namespace GaitWatch.Herd.Tests;

public sealed class LesionClustersTests
{
    private const int Days = 180;

    [Fact]
    public void A_cluster_says_what_where_and_how_many_were_expected()
    {
        // Pen 2 holds 50 of 200 cows. The other three had 12 white line lesions in 180 days: (12 + 0.5) / 3 in pen 2, 0.28 in 12 days.
        var cluster = Assert.Single(Look(Seven()));
        Assert.Equal(("2", LesionGroup.WhiteLine, 7), (cluster.Pen, cluster.Group, cluster.Count));
        Assert.Equal((Some.Day0.AddDays(60), Some.Day0.AddDays(71)), (cluster.From, cluster.To));
        Assert.Equal(12.5 / 3 * 12 / Days, cluster.Expected, 1e-12);
        Assert.InRange(cluster.PValue, 0, 1e-3);
        Assert.Equal("Seven white line lesions from pen 2 in 12 days, expected 0.3: look at the walkway and the turns.", cluster.Sentence);
    }

    [Fact]
    public void The_same_trouble_looked_at_again_is_one_case()
    {
        var again = Elsewhere().Concat(Enumerable.Range(0, 7).Select(i => Found("again" + i, "2-1", 60 + i)));
        Assert.Empty(Look(again));
    }

    [Fact]
    public void A_few_are_no_cluster() => Assert.Empty(Look(Elsewhere().Concat([Found("a", "2-1", 60), Found("b", "2-2", 61)])));

    [Fact]
    public void A_time_shorter_than_the_window_tells_nothing() =>
        Assert.Empty(LesionClusters.Of(Seven(), Herd(), Some.Day0, Some.Day0.AddDays(13), Some.Berlin, new LesionClusterOptions()));

    [Fact]
    public void Cows_without_a_pen_and_lesions_without_a_group_are_passed_over() =>
        Assert.Empty(Look(Seven().Select(finding => finding with { Lesion = Lesion.ScissorClaws }).Concat(Seven().Select(finding => finding with { Id = "x" + finding.Id, Cow = "nobody" }))));

    [Fact]
    public void Chance_alone_brings_one_about_as_seldom_as_promised()
    {
        // Four pens alike, two kinds of lesion, 24 cases each in half a year, at random. The promise is 5 % of herds: 10, and 21 the
        // 99.9 % quantile of that binomial.
        const int Herds = 200;
        var random = new Random(7);
        var herd = Herd();
        var withCluster = Enumerable.Range(0, Herds).Count(_ => Look(
            Enumerable.Range(0, 48).Select(i => Found($"f{i}", $"{random.Next(1, 5)}-{i}", random.Next(Days)) with { Lesion = i % 2 == 0 ? Lesion.WhiteLineAbscess : Lesion.SoleUlcer }),
            herd).Length > 0);
        Assert.InRange(withCluster, 0, 21);
    }

    [Fact]
    public void The_order_of_findings_changes_nothing()
    {
        var findings = Seven().ToArray();
        var expected = string.Join(';', Look(findings));
        Gen.Shuffle(findings).Sample(shuffled => string.Join(';', Look(shuffled)) == expected, iter: 20);
    }

    [Fact]
    public void Every_group_points_somewhere()
    {
        Assert.Equal(6, Enum.GetValues<LesionGroup>().Select(LesionGroups.LookAt).Distinct().Count());
        Assert.Equal("foreign body", LesionGroup.ForeignBody.InWords(1));
        Assert.Null(Lesion.None.Group());
    }

    private static IEnumerable<Finding> Elsewhere() => Enumerable.Range(0, 12).Select(i => Found("e" + i, $"{(i % 3) switch { 0 => 1, 1 => 3, _ => 4 }}-{i}", i * 15));

    private static IEnumerable<Finding> Seven() =>
        Elsewhere().Concat(new[] { 60, 61, 63, 66, 66, 70, 71 }.Select((day, i) => Found("s" + i, $"2-{i}", day)));

    private static Finding Found(string id, string cow, int day) => Some.Finding(id, day, Lesion.WhiteLineAbscess, Leg.Lh) with { Cow = cow };

    private static HerdRegister Herd() => new(Enumerable.Range(1, 4).SelectMany(pen =>
        Enumerable.Range(0, 50).Select(i => new CowRegistration($"{pen}-{i}", Some.At(-400)) { Pen = $"{pen}" })));

    private static System.Collections.Immutable.ImmutableArray<LesionCluster> Look(IEnumerable<Finding> findings, HerdRegister? herd = null) =>
        LesionClusters.Of(findings, herd ?? Herd(), Some.Day0, Some.Day0.AddDays(Days), Some.Berlin, new LesionClusterOptions());
}
