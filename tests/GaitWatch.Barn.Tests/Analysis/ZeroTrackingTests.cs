using GaitWatch.Gait;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests.Analysis;

/// <summary>
/// Zeros from frames to passages over some days: offsets of up to 15 kg that drift by kilograms a day, a stone under a plate, a scraper, a device that starts anew. What is kept of
/// the zeros survives the service, wherever it is stopped.
/// </summary>
public class ZeroTrackingTests
{
    private const int Days = 5;

    // A platform's health compares the newest zero with those of the 24 hours before it.
    private const double HoursApart = 23;

    private const int StoneOn = 2, DeviceAnewOn = 3;

    private static readonly SimulatedPlatform s_platform = SimulatedPlatform.Default with { Sensors = new PlatformSensors { NoiseKg = 0.4, RingHz = 18 } };

    private static readonly double[] s_offsets = [12, -15, -9, 14], s_driftKgADay = [-2, 3, 2.5, -3];

    private static readonly Lazy<FrameInput[][]> Zeroed = new(() => [.. Enumerable.Range(0, Days).Select(day => Frames(day, (_, _) => 0))]);

    private static readonly Lazy<FrameInput[][]> Wandering = new(() => [.. Enumerable.Range(0, Days).Select(day => Frames(day, (cell, t) => Zero(day, cell, t)))]);

    private static async Task<PassageView[]> PassagesAsync(Folding folding) => [.. await folding.Store.Reader.PassagesAsync(null, null, null, null, Page.All)];

    [Fact]
    public async Task Passages_are_what_they_are_on_zeros_that_stay()
    {
        await using var plain = await Folding.OpenAsync();
        await plain.AllAsync([.. Zeroed.Value.SelectMany(day => day)]);
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync([.. Wandering.Value[..^1].SelectMany(day => day)]);
        // On the day before the last the device took its zero anew, and a cell moved by some 14 kg: the platform's health says so.
        var moved = Assert.Single(await folding.Store.Reader.PlatformsAsync());
        Assert.InRange(moved.ZeroDriftKg!.Value, 12, 16);
        Assert.NotEmpty(moved.Troubles);
        await folding.AllAsync(Wandering.Value[^1]);
        var expected = await PassagesAsync(plain);
        var passages = await PassagesAsync(folding);
        // A cow a day, and the scraper.
        Assert.Equal(Days + 1, passages.Length);
        Assert.Single(passages, passage => passage.Reasons[0] == "not-a-cow");
        foreach (var (a, b) in expected.Zip(passages).Where(pair => pair.First.Reasons[0] != "not-a-cow"))
        {
            Assert.Equal(["no-tag"], b.Reasons);
            Assert.Equal(a.WeightKg!.Value, b.WeightKg!.Value, 0.2);
            Assert.Equal(a.Legs.Lf.Share!.Value, b.Legs.Lf.Share!.Value, 2e-4);
            Assert.Equal(a.Legs.Rh.Share!.Value, b.Legs.Rh.Share!.Value, 2e-4);
        }

        // What is left on the last day is the drift of a day, 3 kg; of zeros that stay, noise.
        Assert.InRange(Assert.Single(await folding.Store.Reader.PlatformsAsync()).ZeroDriftKg!.Value, 2.5, 3.3);
        Assert.InRange(Assert.Single(await plain.Store.Reader.PlatformsAsync()).ZeroDriftKg!.Value, 0, 0.5);
    }

    [Theory]
    [InlineData(0)] // on an empty platform between two cows
    [InlineData(14)] // under a cow
    public async Task A_restart_of_the_service_changes_nothing_and_loses_no_zero(int framesBefore)
    {
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync([.. Wandering.Value.SelectMany(day => day)]);
        await using var folding = await Folding.OpenAsync();
        for (var day = 0; day < Days; day++)
        {
            await folding.AllAsync(Wandering.Value[day][..framesBefore]);
            var before = await Fingerprint.OfAsync(folding.Store);
            await folding.RestartAsync();
            Fingerprint.Same(before, await Fingerprint.OfAsync(folding.Store), $"restart on day {day}");
            await folding.AllAsync(Wandering.Value[day][framesBefore..]);
        }

        Assert.Contains(expected, line => line.StartsWith("platform ", StringComparison.Ordinal) && line.Contains("\"zeroDriftKg\":", StringComparison.Ordinal));
        Fingerprint.Same(expected, await Fingerprint.OfAsync(folding.Store), "with restarts");
    }

    private static double Zero(int day, int cell, double seconds)
    {
        var days = (day * HoursApart / 24) + (seconds / 86_400);
        if (day >= DeviceAnewOn)
            return s_driftKgADay[cell] * (days - (DeviceAnewOn * HoursApart / 24));
        // The stone falls before the second on which the cow comes.
        return s_offsets[cell] + (s_driftKgADay[cell] * days) + (cell == 0 && (day > StoneOn || (day == StoneOn && seconds > 1)) ? 6 : 0);
    }

    private static FrameInput[] Frames(int day, Func<int, double, double> zeroKg)
    {
        var tape = new PlatformTape(s_platform, day, noiseKg: 0.4).Empty(2);
        if (day == 1)
            tape.Scrape(40, 0.4).Empty(3);
        var samples = tape.Cross(WalkGenerator.Steady(40 + day, s_platform)).Empty(1).Samples(zeroKg);
        // A device counts its frames from 0 when it starts.
        var seq = day >= DeviceAnewOn ? day - DeviceAnewOn : day;
        return
        [
            .. Enumerable.Range(0, (samples[0].Length + 49) / 50).Select(k => new FrameInput("parlour-exit", new Frame(
                (1000 * seq) + k, Some.Now.AddHours(HoursApart * day).AddMilliseconds(250 * k), 200, [.. samples.Select(cell => cell[(50 * k)..Math.Min(cell.Length, 50 * (k + 1))])]))),
        ];
    }
}
