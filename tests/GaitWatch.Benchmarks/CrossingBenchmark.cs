using System.Diagnostics;
using System.Globalization;
using GaitWatch.Barn;
using GaitWatch.Gait;
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

        table.Write();
        return Task.CompletedTask;
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

    private static (double Median, double Ninety) Measure(Action work)
    {
        // Long enough for the compiler to have made its last version.
        for (var i = 0; i < WarmUp; i++)
            work();
        var times = new double[Rounds];
        for (var i = 0; i < Rounds; i++)
        {
            var since = Stopwatch.GetTimestamp();
            work();
            times[i] = Stopwatch.GetElapsedTime(since).TotalMilliseconds;
        }

        Array.Sort(times);
        return (times[Rounds / 2], times[Rounds * 9 / 10]);
    }

    private static string Milliseconds(double value) => string.Create(CultureInfo.InvariantCulture, $"{value:0.00} ms");
}
