using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>
/// What the cells' zeros do between and during crossings, and what it changes: each crossing is analysed once on cells whose zero is 0 and stays there, and once
/// as one of two on a longer recording with the zeros named.
/// </summary>
internal static class ZeroTracking
{
    private static readonly SimulatedPlatform s_zeroed = SimulatedPlatform.Default with
    {
        Sensors = new PlatformSensors { NoiseKg = 0.5, RingHz = 20, Gain = [1.002, 0.999, 0.998, 1.001] },
    };

    // Offsets of up to 15 kg, as far apart as may be.
    private static readonly double[] s_offsets = [15, -15, -11, 14];

    public static void Report(AccuracyOptions options)
    {
        var table = new FigureTable("zeros", "crossings", "accepted", "share RMS", "worst", "error over stated", "share changed by, RMS", "at most", "weight changed by, RMS");
        foreach (var (name, tape, zero) in new (string, Func<SimulatedCrossing, SimulatedCrossing, long, (PlatformTape Tape, double Second)>, Func<int, double, double, double>)[]
        {
            ("0", Pause, (_, _, _) => 0),
            ("offsets to 15 kg", Pause, (cell, _, _) => s_offsets[cell]),
            ("and drifting by 6 kg a day", Pause, (cell, t, _) => s_offsets[cell] + (t * (cell % 2 == 0 ? 6 : -6) / 86_400)),
            ("and drifting by 20 kg an hour", Pause, (cell, t, _) => s_offsets[cell] + (t * (cell % 2 == 0 ? 20 : -20) / 3600)),
            ("a stone: one cell 4 kg up between two cows", Pause, (cell, t, second) => s_offsets[cell] + (cell == 1 && t > second - 1 ? 4 : 0)),
            ("a scraper between two cows", Scraped, (cell, _, _) => s_offsets[cell]),
            ("and mud scraped off: all cells 3 kg down", Scraped, (cell, t, second) => s_offsets[cell] - (t > second - 3 ? 3 : 0)),
            ("the device starts anew and takes its zero anew", Pause, (cell, t, second) => t > second - 1 ? 0.3 * cell : s_offsets[cell]),
            ("one cell 4 kg up under the second cow, 2.5 s after she came", Pause, (cell, t, second) => s_offsets[cell] + (cell == 1 && t > second + 2.5 ? 4 : 0)),
        })
        {
            Row(table, name, options.Zeros, options.Seed, tape, zero);
        }

        table.Write();
    }

    private static void Row(
        FigureTable table, string name, int pairs, long seed, Func<SimulatedCrossing, SimulatedCrossing, long, (PlatformTape Tape, double Second)> lay, Func<int, double, double, double> zero)
    {
        var analyser = WalkSource.Analyser(null);
        var source = WalkSource.All[0];
        var errors = new CrossingErrors();
        var (shares, weights) = (new List<double>(), new List<double>());
        using var walks = source.Good(CrossingKind.Varied, seed, overEdge: false, s_zeroed).GetEnumerator();
        for (var k = 0; k < pairs; k++)
        {
            var (first, second) = (Next(), Next());
            var (tape, at) = lay(first, second, seed + k);
            var cows = analyser.Analyse(WalkSource.Frames(tape.Samples((cell, t) => zero(cell, t, at)), s_zeroed.Hz)).Crossings
                .Where(crossing => !crossing.Reasons.Contains(QualityReason.NotACow)).ToArray();
            foreach (var (crossing, found) in new[] { first, second }.Zip(cows.Length == 2 ? [cows[0], cows[1]] : new Gait.Crossing?[2]))
            {
                var measured = Measured.Of(found);
                errors.Add(crossing, measured);
                var alone = Measured.Of(analyser.Analyse(WalkSource.Frames(crossing)));
                if (!measured.Accepted || !alone.Accepted)
                    continue;
                shares.AddRange(Feet.All.Select(foot => 100 * Math.Abs(measured.Legs[foot].Share - alone.Legs[foot].Share)));
                weights.Add(100 * ((measured.WeightKg / alone.WeightKg) - 1));
            }
        }

        table.Add(
            name, Text($"{errors.Crossings}"), Text($"{100.0 * errors.Accepted / errors.Crossings:0.0} %"), Text($"{errors.SharePoints:0.000}"), Text($"{errors.WorstSharePoints:0.00}"), Text($"{errors.Standardised().Deviation:0.00}"),
            Text($"{Rms(shares):0.0000}"), Text($"{shares.DefaultIfEmpty(double.NaN).Max():0.000}"), Text($"{Rms(weights):0.000} %"));

        SimulatedCrossing Next() => walks.MoveNext() ? walks.Current : throw new InvalidOperationException("The source has no end.");
    }

    private static (PlatformTape Tape, double Second) Pause(SimulatedCrossing first, SimulatedCrossing second, long seed)
    {
        var tape = new PlatformTape(s_zeroed, seed).Empty(1).Cross(first).Empty(4);
        return (tape.Cross(second), tape.Seconds - second.DurationSeconds);
    }

    private static (PlatformTape Tape, double Second) Scraped(SimulatedCrossing first, SimulatedCrossing second, long seed)
    {
        var tape = new PlatformTape(s_zeroed, seed).Empty(1).Cross(first).Empty(2).Scrape(30, 0.3).Empty(4);
        return (tape.Cross(second), tape.Seconds - second.DurationSeconds);
    }

    private static double Rms(List<double> values) => values.Count == 0 ? double.NaN : Math.Sqrt(values.Average(value => value * value));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
