using System.Diagnostics;
using System.Globalization;
using GaitWatch.Barn;
using GaitWatch.Gait;
using GaitWatch.Gait.Tests;
using GaitWatch.Herd;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch.Benchmarks;

/// <summary>The analysis of one crossing: frames in memory to a finished passage. Medians of many, so that a neighbour's burst does not count.</summary>
internal static class CrossingBenchmark
{
    private const int Rounds = 300;
    private const int WarmUp = 1000;

    public static Task RunAsync()
    {
        var analyser = new CrossingAnalyser(TwinPlate.Default, new GaitOptions());
        var table = new FigureTable("work", "median", "nine in ten within", "to the reference");
        var reference = Measure(Reference);
        table.Add("reference: sort 50,000 numbers", Milliseconds(reference.Median), Milliseconds(reference.Ninety), "1.00");
        foreach (var (name, crossing) in new[]
        {
            ("steady walk", OfFourSeconds(seed => WalkGenerator.Steady(seed))), ("changing speed, slow overlap", OfFourSeconds(seed => WalkGenerator.Varied(seed))),
            ("slow walk, long", WalkGenerator.Varied(2)),
        })
        {
            var frames = Frames(crossing);
            var found = analyser.Analyse(frames).Crossings.Length;
            if (found != 1)
                throw new InvalidOperationException($"The crossing to be timed gives {found} crossings.");
            var time = Measure(() => analyser.Analyse(frames));
            table.Add(
                string.Create(CultureInfo.InvariantCulture, $"{name}, {crossing.DurationSeconds:0.0} s, {crossing.SampleCount * crossing.Samples.Length} samples"),
                Milliseconds(time.Median), Milliseconds(time.Ninety), (time.Median / reference.Median).ToString("0.00", CultureInfo.InvariantCulture));
        }

        Adversarial(table, reference.Median);
        table.Write();
        return Task.CompletedTask;
    }

    /// <summary>Signals made to be hard: the slowest of those of a crossing's length, and two that are far longer, whole and for each four seconds of them.</summary>
    private static void Adversarial(FigureTable table, double reference)
    {
        var analyser = new CrossingAnalyser(TwinPlate.Default, new GaitOptions());
        var timed = AdversarialSignals.OfACrossing()
            .Select(signal => (Signal: signal, Frames: WalkSource.Frames(signal.SamplesKg, signal.Hz)))
            .Select(each => (each.Signal, Time: Measure(() => analyser.Analyse(each.Frames), 40, 60))).ToArray();
        Row($"slowest of {timed.Length} adversarial signals: {timed.MaxBy(each => each.Time.Median).Signal.Name}", timed.MaxBy(each => each.Time.Median));
        foreach (var signal in new[] { AdversarialSignals.FootfallsWithoutEnd(), AdversarialSignals.AnHourStanding() })
        {
            var frames = WalkSource.Frames(signal.SamplesKg, signal.Hz);
            var time = Measure(() => analyser.Analyse(frames), 3, 10);
            Row(signal.Name, (signal, time));
            var part = 4 / signal.Seconds;
            Row("  for each 4 s of it", (signal with { SamplesKg = [.. signal.SamplesKg.Select(cell => cell[..(int)(4 * signal.Hz)])] }, (part * time.Median, part * time.Ninety)));
        }

        void Row(string name, (AdversarialSignals.Signal Signal, (double Median, double Ninety) Time) timed) => table.Add(
            string.Create(CultureInfo.InvariantCulture, $"{name}, {timed.Signal.Seconds:0.0} s, {4 * timed.Signal.SamplesKg[0].Length} samples"),
            Milliseconds(timed.Time.Median), Milliseconds(timed.Time.Ninety), (timed.Time.Median / reference).ToString("0.00", CultureInfo.InvariantCulture));
    }

    // The first of these seeds' crossings that is nearest to four seconds, the empty plate before and after included.
    private static SimulatedCrossing OfFourSeconds(Func<int, SimulatedCrossing> walk) =>
        Enumerable.Range(1, 200).Select(walk).MinBy(crossing => Math.Abs(crossing.DurationSeconds - 4))!;

    // The same on every machine: a linear congruence (Knuth's multiplier) fills, the library sorts.
    private static void Reference()
    {
        var numbers = new double[50_000];
        var state = 1UL;
        for (var i = 0; i < numbers.Length; i++)
        {
            state = unchecked(state * 6364136223846793005UL + 1442695040888963407UL);
            numbers[i] = state >> 11;
        }

        Array.Sort(numbers);
    }

    private static List<Frame> Frames(SimulatedCrossing crossing)
    {
        var reader = new MessageReader(new BarnOptions { Calendar = new FarmCalendar(TimeZoneInfo.Utc) });
        var start = new DateTimeOffset(2026, 3, 2, 5, 14, 7, TimeSpan.Zero);
        var topic = new Topics().Frames;
        return
        [
            .. crossing.Frames(50).Select((part, i) =>
                reader.Read(topic, Payloads.Frame(i, start.AddSeconds(part.Start / crossing.Hz), crossing, part.Start, part.Count).Span, start, live: false) is FrameInput input
                    ? input.Frame
                    : throw new InvalidOperationException("A simulated frame was rejected.")),
        ];
    }

    private static (double Median, double Ninety) Measure(Action work, int warmUp = WarmUp, int rounds = Rounds)
    {
        // Long enough for the compiler to have made its last version.
        for (var i = 0; i < warmUp; i++)
            work();
        var times = new double[rounds];
        for (var i = 0; i < rounds; i++)
        {
            var since = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(since).TotalMilliseconds;
        }

        Array.Sort(times);
        return (times[rounds / 2], times[rounds * 9 / 10]);
    }

    private static string Milliseconds(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.00} ms");
}
