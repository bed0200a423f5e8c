using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

/// <summary>The document of the series says what is written, all of it and nothing else.</summary>
public sealed class SeriesDocumentTests
{
    public static TheoryData<string> Measurements => [.. Written.Select(point => point.Measurement).Distinct()];

    /// <summary>Of each measurement a point with every figure there can be.</summary>
    internal static ImmutableArray<SeriesPoint> Written { get; } = [.. Everything()];

    [Fact]
    public void Every_measurement_has_its_section() =>
        Assert.Equal(Written.Select(point => point.Measurement).Distinct().Order(StringComparer.Ordinal), SeriesDocument.Read().Select(one => one.Name).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Measurements))]
    public void A_section_names_the_tags_and_fields_that_are_written_and_their_types(string measurement)
    {
        var said = SeriesDocument.Read().Single(one => one.Name == measurement);
        var written = Written.First(point => point.Measurement == measurement);
        Assert.Equal(written.Tags.Select(tag => tag.Name).Order(StringComparer.Ordinal), said.Tags);
        Assert.Equal(Types(written.Line), said.Fields);
    }

    [Theory]
    [MemberData(nameof(Measurements))]
    public void The_example_line_is_one_of_that_measurement(string measurement)
    {
        var said = SeriesDocument.Read().Single(one => one.Name == measurement);
        var head = said.Example[..said.Example.IndexOf(' ', StringComparison.Ordinal)].Split(',');
        Assert.Equal(measurement, head[0]);
        Assert.Equal(said.Tags, head[1..].Select(tag => tag[..tag.IndexOf('=', StringComparison.Ordinal)]).ToHashSet());
        var types = Types(said.Example);
        Assert.NotEmpty(types);
        Assert.All(types, field => Assert.Equal(said.Fields[field.Key], field.Value));
    }

    /// <summary>The fields of a line, each with the type that the line protocol gives it.</summary>
    private static SortedDictionary<string, string> Types(string line) => new(
        ModelInflux.FieldsOf(line).ToDictionary(one => one.Key, one => one.Value switch { ['"', ..] => "text", [.., 'i'] => "integer", _ => "float" }, StringComparer.Ordinal), StringComparer.Ordinal);

    private static IEnumerable<SeriesPoint> Everything()
    {
        var passage = TempStore.Passage("p.a", TempStore.Day, "999000000000417") with
        {
            SpeedMetresPerSecond = 1.14,
            LeftEnds = new PlateEnds(0.4, 0.2, 150),
            RightEnds = new PlateEnds(-0.3, 0.2, 150),
            Legs = new PerLeg<LegLoad>(new(168.2, 0.27, 0.001, 371, 0.86, 2), new(1, 0.2, 0.001, 2, 0.8, 1), new(1, 0.2, 0.001, 2, 0.8, 1), new(1, 0.2, 0.001, 2, 0.8, 1)),
        };
        var alert = TempStore.Alert("a", "417", TempStore.Day, 14.2) with { CloseReason = AlertCloseReason.Other, ClosedAt = TempStore.Day };
        var finding = new Finding
        {
            Id = "f", Cow = "417", At = TempStore.Day, Foot = Leg.Rh, Lesion = Lesion.SoleUlcer, Claw = Claw.Outer, Zone = 4, Severity = 2, MStage = MStage.M2,
            LocomotionScore = 3, Signs = [VetSign.NoWeightOnLeg], Actions = [FindingAction.Block], ForeignBody = new ForeignBody("stone", 6),
        };
        var recovery = new RecoveryAssessment
        {
            FindingId = "f", Cow = "417", Foot = Leg.Rh, TreatedAt = TempStore.Day, Status = RecoveryStatus.Recovering, DropPercentAtTreatment = 17.5, DropPercentNow = 6.1, DropLowerPercent = 3.9,
            DropUpperPercent = 8.4, HalfLifeDays = 7.2, BandPercent = 4.2, ExpectedNormalOn = new DateOnly(2026, 3, 24), RecoveredOn = new DateOnly(2026, 3, 26), Explanation = "Because.",
            Days = [new DailyDrop(new DateOnly(2026, 3, 3), 1.2, 9.4, 2, true, false)],
        };
        var figures = new ServiceFigures
        {
            Received = 1, Stored = 1, Rejected = 0, Duplicates = 0, PendingInputs = 0, CommitSeconds = 0.1, FoldSeconds = 0.1, FoldFailures = 0, UnsentPoints = 1, UnsentSeconds = 0.5,
            RefusedPoints = 0, MemoryBytes = 1,
        };
        return
        [
            .. PassagePoints.Of("home", passage, "417", PointTests.Told(passage)),
            .. AlertPoints.Of("home", [new AlertChange(TempStore.Day, AlertChangeKind.Closed, alert)], "2"),
            .. FindingPoints.Of("home", finding, "2"),
            .. RecoveryPoints.Of("home", recovery, new FarmCalendar(TimeZoneInfo.Utc)),
            .. PlatformPoints.OfZero(TempStore.Options("."), "parlour-exit", 5, [0.1, 0.2, 0.3, 0.4]),
            PlatformPoints.OfStatus("home", "parlour-exit", 5, true, "2.1.0"),
            ServicePoints.Of("home", TempStore.Day, figures),
        ];
    }
}
