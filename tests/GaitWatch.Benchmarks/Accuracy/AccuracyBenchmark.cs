using System.Globalization;
using GaitWatch.Simulator;

namespace GaitWatch.Benchmarks;

/// <summary>How near the figures of a crossing come to the truth, on crossings of all sources, beside a plain numpy reference.</summary>
internal static class AccuracyBenchmark
{
    private static readonly string[] s_columns =
        ["crossings", "accepted", "share RMS", "95 %", "worst", "weight", "peak", "stance", "stride"];

    public static async Task RunAsync(AccuracyOptions options)
    {
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Seeds from {options.Seed}. Shares in percentage points, weight and peak in per cent, times in ms; all RMS but '95 %' and 'worst'.\n"));
        using var reference = options.Reference > 0 ? new ReferenceRun(options.Reference) : null;
        Console.WriteLine("2.4 m, 200 Hz, a cell at each end of each plate");
        Console.WriteLine("('impulses known': the true impulse of every footfall, over one stride time for all of them: what the unevenness of single strides makes of that.)");
        var rows = new List<(string Name, CrossingErrors Ours, CrossingErrors Known, Task<CrossingErrors>? Reference)>();
        foreach (var source in WalkSource.All)
        {
            foreach (var (kind, overEdge, count) in new[]
            {
                (CrossingKind.Steady, false, options.Steady), (CrossingKind.Varied, false, options.Varied),
                (CrossingKind.Steady, true, options.Edges / 2), (CrossingKind.Varied, true, options.Edges / 2),
            })
            {
                var name = $"{source.Name} source, {(kind == CrossingKind.Steady ? "steady" : "varied")}{(overEdge ? ", over an edge" : "")}";
                var (ours, known, plain) = Measure(source, kind, overEdge, count, null, options.Seed, reference);
                rows.Add((name, ours, known, plain));
                Progress($"{name}: {count} crossings measured");
            }
        }

        var table = new FigureTable(s_columns);
        var calibration = new FigureTable("error / stated error", "1st fifth", "2nd", "3rd", "4th", "5th", "all");
        foreach (var (name, ours, known, plain) in rows)
        {
            Add(table, name, ours);
            if (plain is not null)
            {
                Add(table, "  numpy reference", await plain);
                Progress($"{name}: reference measured");
            }

            if (!name.Contains("edge", StringComparison.Ordinal))
                Add(table, "  impulses known", known);
            calibration.Add([name, .. ours.StandardisedFifths().Append(ours.Standardised()).Select(fifth => string.Create(CultureInfo.InvariantCulture, $"{fifth.Mean:+0.00;-0.00;0.00} / {fifth.Deviation:0.00}"))]);
        }

        table.Write();
        Console.WriteLine("\nStated errors: mean / standard deviation of (error / stated error), by fifths of the stated error");
        calibration.Write();
        if (options.Platforms > 0)
        {
            Console.WriteLine("\nOther platforms, all feet inside");
            OtherPlatforms(options);
        }

        if (options.Zeros > 0)
        {
            Console.WriteLine("\nZeros that drift and step: two cows of the first source, varied, a few seconds apart");
            ZeroTracking.Report(options);
        }

        Console.WriteLine("\nBad crossings");
        BadCrossings.Report(options);
        Progress("bad crossings measured");
        Console.WriteLine("\nTags in a queue of cows");
        TagQueue.Report(options);
    }

    // Progress goes where it does not stand between the tables.
    private static void Progress(string what) => Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{DateTime.UtcNow:HH:mm:ss} {what}"));

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

            Progress($"{name}: {options.Platforms} crossings a row measured");
        }

        table.Write();
    }

    private static (CrossingErrors Ours, CrossingErrors Known, Task<CrossingErrors>? Reference) Measure(
        WalkSource source, CrossingKind kind, bool overEdge, int count, SimulatedPlatform? platform, long seed, ReferenceRun? reference)
    {
        var analyser = WalkSource.Analyser(platform);
        var (ours, known) = (new CrossingErrors(), new CrossingErrors());
        var batch = new List<SimulatedCrossing>();
        foreach (var crossing in source.Good(kind, seed, overEdge, platform).Take(count))
        {
            ours.Add(crossing, Measured.Of(analyser.Analyse(WalkSource.Frames(crossing))));
            known.Add(crossing, Measured.Knowing(crossing));
            if (batch.Count < reference?.Most)
                batch.Add(crossing);
        }

        return (ours, known, reference is null ? null : Plain(reference.MeasureAsync(batch)));

        async Task<CrossingErrors> Plain(Task<IReadOnlyList<Measured>> measured)
        {
            var plain = new CrossingErrors();
            foreach (var (crossing, found) in batch.Zip(await measured))
                plain.Add(crossing, found);
            // The samples are no longer needed.
            batch.Clear();
            return plain;
        }
    }

    private static void Add(FigureTable table, string name, CrossingErrors errors)
    {
        string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
        table.Add(
            $"{name} ({errors.Crossings})", Text($"{100.0 * errors.Accepted / Math.Max(1, errors.Crossings):0.0} %"), Text($"{errors.SharePoints:0.000}"), Text($"{errors.SharePoints95:0.00}"),
            Text($"{errors.WorstSharePoints:0.00}"), Text($"{errors.WeightPercent:0.00} %"), Text($"{errors.PeakPercent:0.00} %"), Text($"{errors.StanceMilliseconds:0.0}"), Text($"{errors.StrideMilliseconds:0.0}"));
    }
}
