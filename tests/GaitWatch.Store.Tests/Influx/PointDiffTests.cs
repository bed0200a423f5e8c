using CsCheck;

namespace GaitWatch.Store.Tests;

public sealed class PointDiffTests
{
    /// <summary>What a database shows that follows InfluxDB's rule: same measurement, tags and time overwrite, field by field.</summary>
    private static SortedDictionary<string, SortedDictionary<string, double>> Shown(IEnumerable<Model> points)
    {
        var shown = new SortedDictionary<string, SortedDictionary<string, double>>(StringComparer.Ordinal);
        foreach (var point in points)
            Write(shown, point);
        return shown;
    }

    private static void Write(SortedDictionary<string, SortedDictionary<string, double>> shown, Model point)
    {
        if (!shown.TryGetValue(point.Key, out var fields))
            shown[point.Key] = fields = new SortedDictionary<string, double>(StringComparer.Ordinal);
        foreach (var (name, value) in point.Fields)
            fields[name] = value;
    }

    private static readonly Gen<Model> s_point =
        from cow in Gen.Int[1, 3]
        from at in Gen.Long[0, 3]
        from has in Gen.Bool
        from a in Gen.Int[0, 2]
        select new Model($"{cow}", at, has ? a : null);

    [Fact]
    public void Whatever_was_shown_before_afterwards_the_new_points_are_and_no_others() =>
        Gen.Select(s_point.Array[0, 6], s_point.Array[0, 6]).Sample((before, after) =>
        {
            // A set has one point a key.
            before = [.. before.DistinctBy(point => point.Key)];
            after = [.. after.DistinctBy(point => point.Key)];
            var diff = PointDiff.Of([.. before.Select(point => point.Point)], [.. after.Select(point => point.Point)]);

            var shown = Shown(before);
            foreach (var deletion in diff.Deletions)
            {
                Assert.Equal(deletion.From, deletion.To);
                shown.Remove($"{deletion.Tags.Single(tag => tag.Name == "cow").Value}@{deletion.From}");
            }

            foreach (var point in diff.Points)
                Write(shown, after.Single(model => model.Point == point));
            Assert.Equal(Shown(after), shown);
        });

    [Fact]
    public void What_did_not_change_is_not_sent_again()
    {
        SeriesPoint[] points = [new Model("1", 5, 2.5).Point, new Model("2", 5, null).Point];
        var diff = PointDiff.Of(points, points);
        Assert.Empty(diff.Deletions);
        Assert.Empty(diff.Points);
    }

    private sealed record Model(string Cow, long At, double? A)
    {
        public string Key => $"{Cow}@{At}";

        public IEnumerable<(string Name, double Value)> Fields => A is { } a ? [("a", a), ("b", 1)] : [("b", 1)];

        public SeriesPoint Point { get; } = new PointBuilder("m", At, "home").Tag("cow", Cow).Field("b", 1.0).Field("a", A).Build();
    }
}
