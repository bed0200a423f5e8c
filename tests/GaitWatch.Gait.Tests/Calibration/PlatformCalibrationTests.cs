namespace GaitWatch.Gait.Tests;

/// <summary>Checks with a test weight, held against the lever rule worked by hand.</summary>
public class PlatformCalibrationTests
{
    private static readonly DateTimeOffset s_at = new(2026, 3, 2, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_true_platform_is_within_everywhere()
    {
        var judged = Judge(100, [1, 1, 1, 1]);
        Assert.True(judged.IsWithin);
        Assert.True(judged.ZeroReturned);
        Assert.All(judged.Places, place => Assert.Equal(100, place.ReadingKg, 9));
        Assert.All(judged.Cells, cell => Assert.Equal(0, cell.Percent!.Value, 9));
        Assert.Equal([0.24, 2.16, 0.24, 2.16], judged.Places.Select(place => Math.Round(place.X!.Value, 9)));
    }

    [Fact]
    public void A_cell_that_reads_two_per_cent_low_is_named()
    {
        // 100 kg a tenth of the plate inside: nine tenths on the near cell. The right exit cell reads 0.98 of what is on it, so
        // 90 x 0.98 + 10 = 98.2 kg there and 10 x 0.98 + 90 = 99.8 kg at the other end. At e = 0.5 kg 100 kg are 200 e: 0.5 kg in service.
        var judged = Judge(100, [1, 1, 1, 0.98]);
        Assert.Equal([100, 100, 99.8, 98.2], judged.Places.Select(place => Math.Round(place.ReadingKg, 9)));
        Assert.Equal([0, 0, -0.2, -1.8], judged.Places.Select(place => Math.Round(place.ErrorKg, 9)));
        Assert.Equal([true, true, true, false], judged.Places.Select(place => place.IsWithin));
        Assert.All(judged.Places, place => Assert.Equal((0.5, 0.5), (place.ToleranceKg, place.MaintenanceToleranceKg)));
        Assert.Equal([0, 0, 0, -2], judged.Cells.Select(cell => Math.Round(cell.Percent!.Value, 9)));
        Assert.False(judged.IsWithin);
    }

    [Fact]
    public void Offsets_and_their_steady_drift_are_taken_out_and_a_zero_that_does_not_return_is_told()
    {
        var offset = new[] { 12.0, -7, 3, 5 };
        var steady = Judge(100, [1, 1, 1, 1], (cell, minutes) => offset[cell] + (0.05 * minutes));
        Assert.All(steady.Places, place => Assert.Equal(100, place.ReadingKg, 9));
        // Two cells of 0.05 kg a minute over five minutes: half a kilogram, the error allowed at no load.
        Assert.Equal(0.5, steady.LeftZeroReturnKg, 9);
        Assert.True(steady.IsWithin);
        var stone = Judge(100, [1, 1, 1, 1], (cell, minutes) => offset[cell] + (cell == 0 && minutes >= 5 ? 2 : 0));
        Assert.Equal(2, stone.LeftZeroReturnKg, 9);
        Assert.False(stone.ZeroReturned);
        Assert.False(stone.IsWithin);
    }

    [Fact]
    public void Cells_are_not_told_apart_by_one_place_nor_by_places_alike()
    {
        var judged = Judge(100, [1, 1, 1, 0.98], places: ["l0", "l1", "r1", "r1"]);
        Assert.Equal(0, judged.Cells[0].Percent!.Value, 9);
        Assert.Null(judged.Cells[2].Percent);
        Assert.Null(judged.Cells[3].Percent);
        Assert.False(judged.IsWithin);
        Assert.Null(Judge(100, [1, 1, 1, 1], places: ["l0"]).Cells[0].Percent);
    }

    [Fact]
    public void A_class_that_is_none_is_refused() =>
        Assert.Throws<ArgumentException>(() => PlatformCalibration.Judge(
            TwinPlate.Default with { AccuracyClass = "X" }, new TestWeightTrial(100, Empty((_, _) => 0, 0), [], Empty((_, _) => 0, 5))));

    private static PlatformCalibration Judge(double weightKg, double[] gains, Func<int, double, double>? zero = null, string[]? places = null)
    {
        zero ??= (_, _) => 0;
        var platform = TwinPlate.Default;
        return PlatformCalibration.Judge(platform, new TestWeightTrial(
            weightKg, Empty(zero, 0), [.. (places ?? ["l0", "l1", "r0", "r1"]).Select((id, k) => new PlacedReadings(id, Loaded(id, k + 1)))], Empty(zero, 5)));

        CellReadings Loaded(string id, double minutes)
        {
            var over = platform.Cells.First(cell => cell.Id == id);
            // A tenth of the plate inside its end.
            var part = over.X == 0 ? 0.1 : 0.9;
            return new CellReadings(s_at.AddMinutes(minutes), [.. platform.Cells.Select((cell, i) =>
                zero(i, minutes) + (cell.Plate != over.Plate ? 0 : gains[i] * weightKg * (cell.X == 0 ? 1 - part : part)))]);
        }
    }

    private static CellReadings Empty(Func<int, double, double> zero, double minutes) =>
        new(s_at.AddMinutes(minutes), [.. Enumerable.Range(0, 4).Select(i => zero(i, minutes))]);
}
