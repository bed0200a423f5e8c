using GaitWatch.Simulator;
using Xunit.Abstractions;

namespace GaitWatch.Gait.Tests;

/// <summary>
/// The gain mismatch of a plate's cells, from walks alone, on simulated platforms whose cells are known to read wrong. The simulator's
/// cows walk steadily, change their speed, or walk slowly; some are sore.
/// </summary>
public class EndToEndGainTests(ITestOutputHelper output)
{
    private const int Crossings = 150;

    public static TheoryData<double, double> Mismatches => new()
    {
        // per cent that the exit cell reads more than the entry cell: left plate, right plate
        { 0, 0 },
        { 0.5, -0.5 },
        { -1, 2 },
        { 3, 0 },
        { -3, 3 },
    };

    [Theory]
    [MemberData(nameof(Mismatches))]
    public void A_mismatch_is_found_within_two_standard_errors(double left, double right)
    {
        var told = Walk(Platform(left, right), 40_000, Crossings);
        foreach (var (mismatch, gain) in new[] { (left, EndToEndGain.Of(told.Left)), (right, EndToEndGain.Of(told.Right)) })
        {
            output.WriteLine($"{mismatch:0.0} %: {gain!.Percent:0.00} +- {gain.ErrorPercent:0.00} % from {gain.Crossings} crossings, feet of {gain.LoadKg:0} kg");
            Assert.InRange((gain.Percent - mismatch) / gain.ErrorPercent, -2, 2);
            Assert.InRange(gain.ErrorPercent, EndToEndGain.SystematicPercent, 0.3);
            Assert.InRange(gain.LoadKg, 150, 350);
        }
    }

    [Theory]
    [InlineData(-0.2)]
    [InlineData(0.2)]
    public void A_herd_that_always_slows_down_or_hurries_off_is_not_taken_for_a_mismatch(double speedChange)
    {
        var platform = Platform(1, 1);
        var told = Walk(platform, 60_000, Crossings, seed => WalkGenerator.Cross(WalkSpec.Draw(new(seed, 1)) with { SpeedChange = speedChange }, seed, platform));
        var gain = EndToEndGain.Of(told.Left)!;
        output.WriteLine($"{gain.Percent:0.00} +- {gain.ErrorPercent:0.00} %");
        Assert.InRange(gain.Percent, 1 - 0.6, 1 + 0.6);
    }

    [Fact]
    public void On_more_cells_the_outermost_are_compared()
    {
        var platform = SimulatedPlatform.Of(3.6, 200, 4, 0.1);
        // Gains that rise evenly from 1 to 1.02: a plate that stays straight reads so too.
        platform = platform with { Sensors = Sensors([.. platform.Cells.Select(cell => 1 + (0.02 * (cell.X - 0.1) / 3.4))]) };
        var gain = EndToEndGain.Of(Walk(platform, 80_000, 60).Left)!;
        output.WriteLine($"{gain.Percent:0.00} +- {gain.ErrorPercent:0.00} %");
        Assert.InRange((gain.Percent - PlateReads(platform)) / gain.ErrorPercent, -2, 2);
    }

    [Fact]
    public void The_stated_error_is_the_error_it_has()
    {
        var platform = Platform(1, 1);
        var groups = Walk(platform, 100_000, 900).Left.Chunk(EndToEndGain.EnoughCrossings).Where(group => group.Length == EndToEndGain.EnoughCrossings)
            .Select(group => EndToEndGain.Of(group)!).ToArray();
        // Without what many crossings do not average out.
        var stated = Math.Sqrt(groups.Average(g => (g.ErrorPercent * g.ErrorPercent) - (EndToEndGain.SystematicPercent * EndToEndGain.SystematicPercent)));
        var mean = groups.Average(g => g.Percent);
        var real = Math.Sqrt(groups.Sum(g => (g.Percent - mean) * (g.Percent - mean)) / (groups.Length - 1));
        output.WriteLine($"{groups.Length} groups: mean {mean:0.000} %, spread {real:0.000}, stated {stated:0.000}");
        // The spread of 20 groups is itself known to one part in six.
        Assert.InRange(real / stated, 0.6, 1.5);
        Assert.InRange(mean - 1, -EndToEndGain.SystematicPercent, EndToEndGain.SystematicPercent);
    }

    [Fact]
    public void One_crossing_in_ten_that_is_nonsense_hardly_moves_it_and_neither_does_the_order()
    {
        var told = Walk(Platform(1, 1), 120_000, 120).Left;
        var plain = EndToEndGain.Of(told)!;
        PlateEnds[] spoilt = [.. told, .. Enumerable.Range(0, told.Count / 10).Select(i => new PlateEnds(40 + i, 0.4, 250))];
        Assert.InRange(EndToEndGain.Of(spoilt)!.Percent - plain.Percent, -0.2, 0.2);
        new Random(4).Shuffle(spoilt);
        Assert.Equal(EndToEndGain.Of(spoilt), EndToEndGain.Of(spoilt.Reverse()));
    }

    [Fact]
    public void Few_crossings_tell_nothing() =>
        Assert.Null(EndToEndGain.Of(Enumerable.Repeat(new PlateEnds(1, 0.4, 250), EndToEndGain.EnoughCrossings - 1)));

    // What a plate on equally stiff cells reads at its last cell over its first (the statics of the simulator's plates).
    private static double PlateReads(SimulatedPlatform platform)
    {
        var cells = Enumerable.Range(0, platform.Cells.Length).Where(i => platform.Cells[i].IsLeft).ToArray();
        var xs = cells.Select(i => platform.Cells[i].X).ToArray();
        var mean = xs.Average();
        var spread = xs.Sum(x => (x - mean) * (x - mean));
        double At(double u) => cells.Select((i, k) => platform.Sensors!.Gain[i] * ((1.0 / xs.Length) + ((u - mean) * (xs[k] - mean) / spread))).Sum();
        return 100 * ((At(xs[^1]) / At(xs[0])) - 1);
    }

    private static SimulatedPlatform Platform(double left, double right) => SimulatedPlatform.Default with
    {
        Sensors = Sensors([1 - (left / 200), 1 + (left / 200), 1 - (right / 200), 1 + (right / 200)]),
    };

    private static PlatformSensors Sensors(double[] gains) => PlatformSensors.Draw(new SeededRandom(11, 3), gains.Length) with { Gain = [.. gains] };

    private static (List<PlateEnds> Left, List<PlateEnds> Right) Walk(SimulatedPlatform platform, long firstSeed, int crossings, Func<long, SimulatedCrossing>? make = null)
    {
        var analyser = new CrossingAnalyser(Tape.Platform(platform), new GaitOptions());
        var (left, right) = (new List<PlateEnds>(), new List<PlateEnds>());
        for (var seed = firstSeed; seed < firstSeed + crossings; seed++)
        {
            var crossing = make is not null ? make(seed) : seed % 3 == 0 ? WalkGenerator.Varied(seed, platform) : WalkGenerator.Steady(seed, platform);
            foreach (var found in analyser.Analyse(Tape.Frames(crossing)).Crossings)
            {
                if (found.LeftEnds is { } onLeft)
                    left.Add(onLeft);
                if (found.RightEnds is { } onRight)
                    right.Add(onRight);
            }
        }

        return (left, right);
    }
}
