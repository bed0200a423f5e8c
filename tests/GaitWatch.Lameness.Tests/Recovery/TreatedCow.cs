using GaitWatch.Gait;

namespace GaitWatch.Lameness.Tests;

/// <summary>An invented cow: sound, then sparing a leg, treated on day 0, and healing along a given course.</summary>
internal sealed class TreatedCow(int seed, double sd = 1.5)
{
    private static readonly DateTimeOffset Treated = new(2026, 3, 3, 10, 0, 0, TimeSpan.Zero);

    public static TreatedFoot Foot { get; } = new()
    {
        FindingId = "f", Cow = "417", Foot = Leg.Rh, TreatedAt = Treated, OnsetAt = Treated.AddDays(-6),
    };

    public static RecoveryBaseline Baseline { get; } = new(Treated.AddDays(-7));

    public static RecoveryOptions Options { get; } = new();

    public static DateTimeOffset Day(double days) => Treated.AddDays(days);

    /// <summary>Two passages a day from 40 days before to the end; the day's mood is shared by both.</summary>
    public List<LoadReading> Readings(Func<double, double> dropAfter, int days, double dropBefore = 14)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var readings = new List<LoadReading>();
        for (var day = -40; day <= days; day++)
        {
            var mood = sd * 0.9 * Normal();
            foreach (var hour in (double[])[-4, 6])
            {
                var t = day + hour / 24;
                var drop = t < -6 ? 0 : t < 0 ? dropBefore : dropAfter(t);
                readings.Add(new LoadReading(Treated.AddDays(t), 0.2 * (1 - (drop + mood + sd * 0.6 * Normal()) / 100), 0.2));
            }
        }

        return readings;
    }

    public static RecoveryAssessment Assess(IEnumerable<LoadReading> readings, double asOfDay, params RecoveryMark[] marks) =>
        RecoveryAssessor.Assess(Foot with { Marks = [.. marks] }, readings, Baseline, Day(asOfDay), Options);
}
