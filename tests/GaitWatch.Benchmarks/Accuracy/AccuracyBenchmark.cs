using System.Globalization;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>How near the figures of a crossing come to the truth, on crossings of both sources, beside a plain numpy reference.</summary>
internal static class AccuracyBenchmark
{
    private static readonly string[] s_columns =
        ["crossings", "accepted", "share RMS", "95 %", "worst", "weight", "peak", "stance", "stride"];

    public static Task RunAsync(AccuracyOptions options)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Seeds from {options.Seed}. Shares in percentage points, weight and peak in per cent, times in ms; all RMS but '95 %' and 'worst'.\n"));
        using var reference = options.WithReference ? ReferenceRun.Start() : null;
        Console.WriteLine("2.4 m, 200 Hz, a cell at each end of each plate");
        var table = new FigureTable(s_columns);
        var calibration = new FigureTable("error / stated error", "1st fifth", "2nd", "3rd", "4th", "5th", "all");
        foreach (var source in WalkSource.All)
        {
            foreach (var (kind, overEdge, count) in new[]
            {
                (CrossingKind.Steady, false, options.Steady), (CrossingKind.Varied, false, options.Varied),
                (CrossingKind.Steady, true, options.Edges / 2), (CrossingKind.Varied, true, options.Edges / 2),
            })
            {
                var name = $"{source.Name} source, {(kind == CrossingKind.Steady ? "steady" : "varied")}{(overEdge ? ", over an edge" : "")}";
                var errors = Measure(source, kind, overEdge, count, null, options.Seed, reference);
                Add(table, name, errors.Ours);
                if (errors.Reference is { } plain)
                    Add(table, "  numpy reference", plain);
                calibration.Add([name, .. errors.Ours.StandardisedFifths().Append(errors.Ours.Standardised()).Select(fifth => string.Create(CultureInfo.InvariantCulture, $"{fifth.Mean:+0.00;-0.00} / {fifth.Deviation:0.00}"))]);
            }
        }

        table.Write();
        Console.WriteLine("\nStated errors: mean / standard deviation of (error / stated error), by fifths of the stated error");
        calibration.Write();
        if (options.Platforms > 0)
        {
            Console.WriteLine("\nOther platforms, all feet inside");
            OtherPlatforms(options);
        }

        Console.WriteLine("\nBad crossings");
        BadCrossings.Report(options);
        Console.WriteLine("\nTags in a queue of cows");
        TagQueue.Report(options);
        return Task.CompletedTask;
    }

    private static void OtherPlatforms(AccuracyOptions options)
    {
        var table = new FigureTable(s_columns);
        foreach (var (name, platform) in new (string, SimulatedPlatform)[]
        {
            ("1.8 m", SimulatedPlatform.Of(1.8, 200)), ("3 m", SimulatedPlatform.Of(3, 200)), ("4 m", SimulatedPlatform.Of(4, 200, 3)), ("6 m", SimulatedPlatform.Of(6, 200, 4)),
            ("2.4 m, four cells a plate, 0.2 m inside", SimulatedPlatform.Of(2.4, 200, 4, 0.2)), ("50 Hz", SimulatedPlatform.Of(2.4, 50)), ("100 Hz", SimulatedPlatform.Of(2.4, 100)),
            ("500 Hz", SimulatedPlatform.Of(2.4, 500)), ("1000 Hz", SimulatedPlatform.Of(2.4, 1000)),
        })
        {
            foreach (var source in WalkSource.All)
            {
                foreach (var kind in new[] { CrossingKind.Steady, CrossingKind.Varied })
                    Add(table, $"{name}, {source.Name} source, {(kind == CrossingKind.Steady ? "steady" : "varied")}", Measure(source, kind, false, options.Platforms, platform, options.Seed, null).Ours);
            }
        }

        table.Write();
    }

    private static (CrossingErrors Ours, CrossingErrors? Reference) Measure(
        WalkSource source, CrossingKind kind, bool overEdge, int count, SimulatedPlatform? platform, long seed, ReferenceRun? reference)
    {
        var analyser = WalkSource.Analyser(platform);
        var ours = new CrossingErrors();
        var batch = new List<SimulatedCrossing>();
        foreach (var crossing in source.Good(kind, seed, overEdge, platform).Take(count))
        {
            ours.Add(crossing, Measured.Of(analyser.Analyse(WalkSource.Frames(crossing))));
            if (reference is not null)
                batch.Add(crossing);
        }

        if (reference is null)
            return (ours, null);
        var plain = new CrossingErrors();
        foreach (var (crossing, measured) in batch.Zip(reference.Measure(batch)))
            plain.Add(crossing, measured);
        return (ours, plain);
    }

    private static void Add(FigureTable table, string name, CrossingErrors errors)
    {
        string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
        table.Add(
            $"{name} ({errors.Crossings})", Text($"{100.0 * errors.Accepted / Math.Max(1, errors.Crossings):0.0} %"), Text($"{errors.SharePoints:0.000}"), Text($"{errors.SharePoints95:0.00}"),
            Text($"{errors.WorstSharePoints:0.00}"), Text($"{errors.WeightPercent:0.00} %"), Text($"{errors.PeakPercent:0.00} %"), Text($"{errors.StanceMilliseconds:0.0}"), Text($"{errors.StrideMilliseconds:0.0}"));
    }
}
