namespace GaitWatch.Gait.Tests;

/// <summary>
/// The tolerance tables of two standards. Every row is quoted from memory, no copy was at hand: OIML R 76-1:2006, table 6
/// (maximum permissible errors on initial verification) and 3.5.2 (in service twice that); NIST Handbook 44, section 2.20, table 6
/// (maintenance tolerances, in scale divisions). Loads stand in intervals e.
/// </summary>
public class WeighingToleranceTests
{
    [Theory]
    // OIML R 76-1 table 6: 0.5 e, 1 e, 1.5 e; a band includes its upper end.
    [InlineData(AccuracyClass.I, 50_000, 0.5)]
    [InlineData(AccuracyClass.I, 50_001, 1)]
    [InlineData(AccuracyClass.I, 200_000, 1)]
    [InlineData(AccuracyClass.I, 200_001, 1.5)]
    [InlineData(AccuracyClass.II, 5_000, 0.5)]
    [InlineData(AccuracyClass.II, 5_001, 1)]
    [InlineData(AccuracyClass.II, 20_000, 1)]
    [InlineData(AccuracyClass.II, 100_000, 1.5)]
    [InlineData(AccuracyClass.III, 0, 0.5)]
    [InlineData(AccuracyClass.III, 500, 0.5)]
    [InlineData(AccuracyClass.III, 501, 1)]
    [InlineData(AccuracyClass.III, 2_000, 1)]
    [InlineData(AccuracyClass.III, 2_001, 1.5)]
    [InlineData(AccuracyClass.III, 10_000, 1.5)]
    [InlineData(AccuracyClass.IIII, 50, 0.5)]
    [InlineData(AccuracyClass.IIII, 51, 1)]
    [InlineData(AccuracyClass.IIII, 200, 1)]
    [InlineData(AccuracyClass.IIII, 1_000, 1.5)]
    public void Oiml_R_76_1(AccuracyClass accuracyClass, double intervals, double errorIntervals)
    {
        foreach (var e in new[] { 0.1, 0.5, 2 })
        {
            Assert.Equal(errorIntervals * e, WeighingTolerance.InitialKg(accuracyClass, e, intervals * e), 9);
            Assert.Equal(2 * errorIntervals * e, WeighingTolerance.InServiceKg(accuracyClass, e, intervals * e), 9);
            Assert.Equal(errorIntervals * e, WeighingTolerance.InitialKg(accuracyClass, e, -intervals * e), 9);
        }
    }

    [Theory]
    // NIST Handbook 44 section 2.20 table 6: maintenance tolerances 1, 2, 3, 5 divisions.
    [InlineData(AccuracyClass.I, 50_000, 1)]
    [InlineData(AccuracyClass.I, 200_001, 3)]
    [InlineData(AccuracyClass.II, 5_000, 1)]
    [InlineData(AccuracyClass.II, 20_000, 2)]
    [InlineData(AccuracyClass.II, 20_001, 3)]
    [InlineData(AccuracyClass.III, 500, 1)]
    [InlineData(AccuracyClass.III, 501, 2)]
    [InlineData(AccuracyClass.III, 2_000, 2)]
    [InlineData(AccuracyClass.III, 4_000, 3)]
    [InlineData(AccuracyClass.III, 4_001, 5)]
    [InlineData(AccuracyClass.IIII, 50, 1)]
    [InlineData(AccuracyClass.IIII, 200, 2)]
    [InlineData(AccuracyClass.IIII, 400, 3)]
    [InlineData(AccuracyClass.IIII, 401, 5)]
    public void Nist_Handbook_44(AccuracyClass accuracyClass, double divisions, double tolerance) =>
        Assert.Equal(tolerance * 0.5, WeighingTolerance.MaintenanceKg(accuracyClass, 0.5, divisions * 0.5), 9);

    [Fact]
    public void A_cow_on_the_usual_platform()
    {
        // 640 kg at e = 0.5 kg are 1,280 e: 1 e at verification, 2 e in service.
        Assert.Equal(0.5, WeighingTolerance.InitialKg(AccuracyClass.III, 0.5, 640));
        Assert.Equal(1.0, WeighingTolerance.InServiceKg(AccuracyClass.III, 0.5, 640));
        Assert.Equal(1.0, WeighingTolerance.MaintenanceKg(AccuracyClass.III, 0.5, 640));
    }

    [Theory]
    [InlineData("III", true)]
    [InlineData("I", true)]
    [InlineData("IIII", true)]
    [InlineData("IV", false)]
    [InlineData("3", false)]
    [InlineData("2", false)]
    [InlineData("iii", false)]
    [InlineData("", false)]
    [InlineData(null, false)]
    public void A_class_is_named_as_on_the_plate(string? text, bool isOne)
    {
        Assert.Equal(isOne, AccuracyClasses.TryParse(text, out _));
        if (text is not null)
            Assert.Equal(isOne, (TwinPlate.Default with { AccuracyClass = text }).Faults().IsEmpty);
    }
}
