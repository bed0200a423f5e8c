using System.Collections.Immutable;
using GaitWatch.Barn;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.Extensions.Logging.Abstractions;

namespace GaitWatch.Benchmarks;

/// <summary>
/// The store of a herd after five years: every registration, visit, finding and alert of that time. Of the passages, gigabytes
/// a year for such a herd, the last ten weeks are there, through the real analysis: a list looks at none older than a foot is
/// followed, and the feet treated before them were judged when they were.
/// </summary>
internal static class FiveYearsOfCows
{
    public const int Cows = 5000;
    private const int Years = 5;
    private const int DaysOfPassages = 70;

    // A herd's lame feet and routine trims by the year, as evidence of the trade has them: some 40 cases a 100 cows, two trims a cow.
    private const int CasesInFiveYears = 2;
    private const int TrimsPerYear = 2;

    public static DateOnly LastDay { get; } = new(2026, 3, 1);

    public static FarmCalendar Calendar { get; } = new(TimeZoneInfo.Utc);

    /// <summary>Fills a store and tells how much is in it.</summary>
    public static async Task<(int Writes, int Passages, int Alerts)> FillAsync(BarnStore store)
    {
        var random = new Random(20260301);
        var (writes, closed) = Written(random);
        await store.Inputs.AppendAsync([.. writes.Select(write => new WriteInput(write))]);
        var passages = Passages(random).ToArray();
        foreach (var part in passages.Chunk(20_000))
            await store.Inputs.AppendAsync(part);
        using var metrics = new BarnMetrics(store);
        await new HerdWorker(store, new BarnOptions { Calendar = Calendar }, TimeProvider.System, metrics, NullLogger<HerdWorker>.Instance).CatchUpAsync();
        await using var state = await store.BeginAsync();
        await state.WriteAlertStepsAsync(closed);
        await state.CommitAsync(await state.FoldedAsync());
        return (writes.Count, passages.Length, closed.Count / 2);
    }

    private static (List<FarmWrite> Writes, List<AlertChange> Alerts) Written(Random random)
    {
        var writes = new List<FarmWrite>();
        var alerts = new List<AlertChange>();
        var first = LastDay.AddYears(-Years);
        var days = LastDay.DayNumber - first.DayNumber;
        for (var day = 3; day <= days + 7; day += 7)
            writes.Add(new VisitWrite(At(first.AddDays(day - 3)), new Visit(first.AddDays(day)) { Places = 120, Trimmer = "Anna" }));
        for (var cow = 0; cow < Cows; cow++)
        {
            var calved = first.AddDays(random.Next(365));
            for (var year = 0; year < Years; year++, calved = calved.AddDays(390))
            {
                if (calved > LastDay)
                    break;
                writes.Add(new RegisterWrite(At(calved), new CowRegistration($"{cow + 1}", At(calved))
                {
                    Eid = Eid.Parse($"982{cow:D12}"), Pen = $"{1 + (cow / 150)}", Parity = 1 + year, CalvedOn = calved, DueOn = calved.AddDays(390), EnteredAt = At(calved),
                }));
            }

            for (var i = 0; i < Years * TrimsPerYear; i++)
                writes.Add(Found($"t{cow}.{i}", cow, first.AddDays(random.Next(days)), (Leg)random.Next(4), Lesion.None, FindingAction.Trimmed));
            for (var i = 0; i < CasesInFiveYears; i++)
                Case(random, cow, i, first.AddDays(random.Next(days)), writes, alerts);
        }

        return (writes, alerts);
    }

    // Flagged, treated with a block, looked at, the block off: three findings and an alert.
    private static void Case(Random random, int cow, int number, DateOnly day, List<FarmWrite> writes, List<AlertChange> alerts)
    {
        var foot = (Leg)random.Next(4);
        var id = $"c{cow}.{number}";
        writes.Add(Found(id, cow, day, foot, Lesion.SoleUlcer, FindingAction.Trimmed, FindingAction.LooseHornRemoved, FindingAction.Block, FindingAction.Wrap));
        writes.Add(Found($"{id}.check", cow, day.AddDays(7), foot, Lesion.SoleUlcer, FindingAction.WrapOff));
        writes.Add(Found($"{id}.off", cow, day.AddDays(28), foot, Lesion.SoleUlcer, FindingAction.BlockOff));
        var raised = new Alert
        {
            Id = id, Cow = $"{cow + 1}", Pattern = AlertPattern.OneLeg, Leg = foot, LegProbability = PerLeg.From(leg => leg == foot ? 1.0 : 0), RaisedAt = At(day.AddDays(-3)),
            OnsetAt = At(day.AddDays(-7)), LoadDropPercent = 15, LoadDropLowerPercent = 12, LoadDropUpperPercent = 18, Urgency = Urgency.Today, State = AlertState.Open,
            Explanation = "Her foot carries less than her own normal.",
        };
        alerts.Add(new AlertChange(raised.RaisedAt, AlertChangeKind.Raised, raised));
        alerts.Add(new AlertChange(
            At(day.AddDays(40)), AlertChangeKind.Closed, raised with { State = AlertState.Closed, ClosedAt = At(day.AddDays(40)), CloseReason = AlertCloseReason.LoadNormal }));
    }

    private static FindingWrite Found(string id, int cow, DateOnly day, Leg foot, Lesion lesion, params ImmutableArray<FindingAction> actions) => new(
        new Finding { Id = id, Cow = $"{cow + 1}", At = At(day).AddHours(9), Foot = foot, Lesion = lesion, Actions = actions, BlockClaw = actions.Contains(FindingAction.Block) ? Claw.Inner : null },
        At(day).AddHours(9));

    private static IEnumerable<Input> Passages(Random random)
    {
        var begin = At(LastDay.AddDays(1 - DaysOfPassages));
        for (var milking = 0; milking < 2 * DaysOfPassages; milking++)
        {
            for (var cow = 0; cow < Cows; cow++)
            {
                var at = begin.AddHours(12 * milking).AddSeconds(8 * cow);
                // Two in a hundred begin to spare a leg within the last month.
                var drop = cow % 50 == 0 ? 0.18 * Math.Clamp((milking - (2.0 * DaysOfPassages) + 60 - (cow % 40)) / 10, 0, 1) : 0;
                double Load(double kg) => kg * (1 + (0.02 * (random.NextDouble() + random.NextDouble() - 1)));
                yield return new DevicePassageInput(
                    "parlour-exit", new DevicePassage($"{milking}.{cow}", Eid.Parse($"982{cow:D12}"), at, at.AddSeconds(4), new PerLeg<double>(Load(172), Load(168), Load(140), Load(144 * (1 - drop)))));
            }
        }
    }

    private static DateTimeOffset At(DateOnly day) => new(day, new TimeOnly(1, 0), TimeSpan.Zero);
}
