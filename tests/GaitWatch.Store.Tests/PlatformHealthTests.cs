using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

/// <summary>What is told of how a platform weighs: its drifts with their tolerances, its plates' ends.</summary>
public sealed class PlatformHealthTests
{
    private const int Cows = 15;

    [Fact]
    public async Task A_platform_that_weighs_true_is_in_no_trouble()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [.. Days(weighsLater: 1, leftEnds: 0.1)], fromFrames: true, Register));
        var platform = Assert.Single(await temp.Store.Reader.PlatformsAsync());
        Assert.Empty(platform.Troubles);
        Assert.InRange(platform.Drift!.Weight!.Percent!.Value, -0.3, 0.3);
        Assert.Equal(["left", "right"], platform.Ends.Select(ends => ends.Plate));
        Assert.All(platform.Ends, ends => Assert.False(ends.IsBeyond));
    }

    [Fact]
    public async Task A_plate_whose_exit_cell_reads_low_is_named_with_its_kilograms_and_the_tolerance()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [.. Days(weighsLater: 1, leftEnds: -2)], fromFrames: true, Register));
        var platform = Assert.Single(await temp.Store.Reader.PlatformsAsync());
        var left = platform.Ends[0];
        Assert.InRange(left.Percent, -2.2, -1.8);
        Assert.True(left.IsBeyond);
        // Feet of 240 kg are 480 e of 0.5 kg: 0.5 kg in service at each end (OIML R 76-1, from memory), so 1 kg between them.
        Assert.Equal((240, 1.0), (left.AtKg, left.ToleranceKg));
        Assert.InRange(left.Kg, -5.3, -4.3);
        var trouble = Assert.Single(platform.Troubles);
        Assert.StartsWith("The left plate reads 2.0 % less at its exit end (cell l1) than at its entry end (cell l0), by 106 crossings", trouble, StringComparison.Ordinal);
        Assert.Contains("gaitwatch calibrate parlour-exit", trouble, StringComparison.Ordinal);
        Assert.Equal("attention", platform.State);
    }

    [Fact]
    public async Task A_herd_that_suddenly_weighs_less_is_told_in_kilograms_with_the_tolerance()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [.. Days(weighsLater: 0.95, leftEnds: 0)], fromFrames: true, Register));
        var platform = Assert.Single(await temp.Store.Reader.PlatformsAsync());
        var weight = platform.Drift!.Weight!;
        Assert.InRange(weight.Percent!.Value, -5.5, -4.5);
        Assert.InRange(weight.Kg, -37, -26);
        // About 600 kg are 1,200 e: 1 kg in service by both standards (from memory).
        Assert.Equal((1.0, 1.0), (weight.ToleranceKg, weight.MaintenanceToleranceKg));
        Assert.Equal(["OIML R 76-1", "NIST Handbook 44 2.20"], weight.Breaks);
        Assert.StartsWith("The same cows weigh ", Assert.Single(platform.Troubles), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_slow_drift_of_one_plate_is_told_from_the_whole_herd()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [.. Days(weighsLater: 1, leftEnds: 0)], fromFrames: true, Register));
        // The left plate reads 4 % more: ln(1.04) between left and right, sqrt(1/2) of it in each balance (Egozcue 2003).
        var balance = Math.Sqrt(0.5) * Math.Log(1.04);
        await temp.ChangeAsync(state => state.WriteShiftsAsync(
            [new PlatformShift("parlour-exit", TempStore.Day, Cows, new Balances(0, balance, balance), false, "")]));
        var sides = Assert.Single(await temp.Store.Reader.PlatformsAsync()).Drift!.Sides!;
        Assert.Equal(4, sides.Percent!.Value, 3);
        Assert.Equal(0.04 * sides.AtKg, sides.Kg, 2);
        Assert.StartsWith(
            "The left plate reads 4.0 % more against the right than it did", Assert.Single(Assert.Single(await temp.Store.Reader.PlatformsAsync()).Troubles), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_stone_under_a_cell_is_told_with_the_tolerance_it_breaks()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.WriteZerosAsync(
            "parlour-exit", [new ZeroLevels(TempStore.Day, [1, 2, 3, 4]), new ZeroLevels(TempStore.Day.AddHours(12), [1, 8.1, 3, 4])]));
        var platform = Assert.Single(await temp.Store.Reader.PlatformsAsync());
        Assert.Equal((6.1, 0.5, null), (platform.Drift!.Zero!.Kg, platform.Drift.Zero.ToleranceKg, platform.Drift.Zero.Percent));
        Assert.StartsWith(
            "The empty platform reads 6.1 kg other than a day before, 12 times what class III allows in service", Assert.Single(platform.Troubles), StringComparison.Ordinal);
    }

    private static HerdRegister Register => new([]);

    // Nine days of a herd, once a day; the last two weigh otherwise. Scatter as walks have it, from a seeded source.
    private static IEnumerable<Passage> Days(double weighsLater, double leftEnds)
    {
        var random = new Random(6);
        for (var day = 0; day < 9; day++)
        {
            for (var cow = 0; cow < Cows; cow++)
            {
                var at = TempStore.Day.AddDays(day).AddMinutes(cow);
                yield return TempStore.Passage($"parlour-exit.{day}-{cow}", at, $"9990000000004{cow:D2}") with
                {
                    WeightKg = (560 + (8 * cow)) * (day > 6 ? weighsLater : 1) * (1 + (0.01 * Scatter(random))),
                    LeftEnds = new PlateEnds(leftEnds + (0.6 * Scatter(random)), 0.35, 240),
                    RightEnds = new PlateEnds(0.6 * Scatter(random), 0.35, 240),
                };
            }
        }
    }

    private static double Scatter(Random random) => (2 * random.NextDouble()) - 1;
}
