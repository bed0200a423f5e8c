using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

/// <summary>
/// Lines as InfluxDB's reference of the line protocol describes them: measurement, comma, tags; a blank; fields with a comma between,
/// whole numbers with an i, text in double quotes; a blank; the time. Commas, equal signs and blanks of tags have a backslash before
/// them, double quotes and backslashes of text too (docs.influxdata.com, InfluxDB v2, "Line protocol", from memory).
/// </summary>
public sealed class PointTests
{
    [Fact]
    public void A_line_escapes_what_the_protocol_uses_itself()
    {
        var point = new PointBuilder("m", 1_772_427_247_250, "home farm").Tag("cow", "4=1,7").Field("kg", 168.2).Field("n", 2L).Field("said", "a \"b\" \\ c\nd").Build();
        Assert.Equal("""m,cow=4\=1\,7,farm=home\ farm kg=168.2,n=2i,said="a \"b\" \\ c d" 1772427247250""", point.Line);
    }

    [Fact]
    public void A_passage_is_a_point_for_the_crossing_one_a_leg_and_one_of_balances()
    {
        var passage = TempStore.Passage("parlour-exit.a", TempStore.Day, "999000000000417");
        var points = PassagePoints.Of("home", passage, "417", Told(passage));

        Assert.Equal(["passage", "leg", "leg", "leg", "leg", "balance"], points.Select(point => point.Measurement));
        Assert.Equal(
            "leg,cow=417,farm=home,leg=lh,platform=parlour-exit,quality=accepted evidence=0.3,expected_share=0.23,footfalls=1i,load_drop_percent="
            + $"{(100 * (1 - (0.2263 / 0.23))).ToString("R", System.Globalization.CultureInfo.InvariantCulture)},load_kg=139,peak_kg=300.5,share=0.2263,share_error=0.0011,share_spread=0.006 1772409600000",
            points[3].Line);
        Assert.DoesNotContain("stance_seconds", points[3].Fields);
    }

    [Fact]
    public void A_passage_that_speaks_for_nobody_says_so_and_why()
    {
        var points = PassagePoints.Of("home", TempStore.Passage("p.x", TempStore.Day, null, QualityReason.NoTag), null, null);
        Assert.Equal(5, points.Count);
        Assert.StartsWith("passage,cow=unknown,farm=home,platform=parlour-exit,quality=rejected,reason=no-tag ", points[0].Line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_deletion_names_the_point_by_all_its_tags()
    {
        var deletion = new PointBuilder("m", 5, "home").Tag("cow", "the \"best\"").Field("a", 1.0).Build().Deletion();
        Assert.Equal("""_measurement="m" AND cow="the \"best\"" AND farm="home" """.TrimEnd(), deletion.Predicate());
        Assert.Equal((5, 5), (deletion.From, deletion.To));
    }

    internal static PassageAssessment Told(Passage passage, params QualityReason[] reasons) => new()
    {
        PassageId = passage.Id,
        Cow = "417",
        At = passage.EndedAt,
        Reasons = [.. reasons],
        Baseline = BaselineState.Watching,
        ExpectedShare = new PerLeg<double>(0.27, 0.27, 0.23, 0.23),
        ShareSpread = new PerLeg<double>(0.005, 0.005, 0.006, 0.006),
        Residual = new Balances(0.01, 0.02, -0.03),
        CommonMovement = new Balances(0.001, 0, 0),
        OneLegEvidence = new PerLeg<double>(0, 0.1, 0.3, 0),
        BothHindEvidence = 0.2,
        BothForeEvidence = 0,
    };
}
