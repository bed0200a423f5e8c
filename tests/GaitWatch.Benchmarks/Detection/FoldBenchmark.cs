using System.Diagnostics;
using System.Globalization;
using GaitWatch.Lameness;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>What one passage costs to fold and one cow to keep, in a herd and in a hundred thousand cows.</summary>
internal static class FoldBenchmark
{
    private const int ManyCows = 100_000;
    private const int PassagesEach = 10;

    public static Task RunAsync()
    {
        var (_, inputs) = FirstSourceHistory.Of(HerdSpec.Barn(3, 300, 120));
        // Once for the code and the tables to be made, once for the figure.
        Fold(inputs);
        var (fold, elapsed) = Fold(inputs);
        var passages = inputs.OfType<PassageInput>().ToArray();
        var cows = passages.Select(p => p.Cow).Distinct().Count();
        var logarithm = Logarithm();
        var table = new FigureTable("detection", "figure");
        table.Add("folding one passage, microseconds", Show(1e6 * elapsed / inputs.Count, "0.0"));
        table.Add("  over a logarithm on the same core", Show(elapsed / inputs.Count / logarithm, "0"));
        table.Add("saved state per cow, bytes", Show((double)fold.Save().Length / cows, "0"));

        var before = GC.GetTotalMemory(true);
        var many = new HerdFold(new LamenessOptions());
        var clock = Stopwatch.StartNew();
        var start = passages[0].At;
        for (var n = 0; n < PassagesEach; n++)
        {
            for (var cow = 0; cow < ManyCows; cow++)
            {
                var model = passages[((n * 7) + cow) % passages.Length];
                var at = start.AddHours(12 * n).AddMilliseconds(cow);
                many.Fold(new PassageInput(
                    cow.ToString(CultureInfo.InvariantCulture), model.Passage with { Id = FormattableString.Invariant($"{n}.{cow}"), StartedAt = at, EndedAt = at }));
            }
        }

        clock.Stop();
        table.Add($"{ManyCows} cows: folding one passage, microseconds", Show(1e6 * clock.Elapsed.TotalSeconds / ManyCows / PassagesEach, "0.0"));
        table.Add($"{ManyCows} cows: memory per cow, bytes", Show((double)(GC.GetTotalMemory(true) - before) / ManyCows, "0"));
        table.Add($"{ManyCows} cows: saved state per cow, bytes", Show((double)many.Save().Length / ManyCows, "0"));
        table.Write();
        return Task.CompletedTask;
    }

    private static (HerdFold Fold, double Seconds) Fold(List<HerdInput> inputs)
    {
        var fold = new HerdFold(new LamenessOptions());
        var clock = Stopwatch.StartNew();
        foreach (var input in inputs)
            fold.Fold(input);
        return (fold, clock.Elapsed.TotalSeconds);
    }

    private static double Logarithm()
    {
        const int count = 5_000_000;
        var (sum, clock) = (0.0, Stopwatch.StartNew());
        for (var i = 1; i <= count; i++)
            sum += Math.Log(i + sum);
        return sum > 0 ? clock.Elapsed.TotalSeconds / count : double.NaN;
    }

    private static string Show(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
