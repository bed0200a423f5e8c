using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

/// <summary>
/// A herd with a year behind it and a morning that has everything: cows to look at today, one for the next visit, one to watch,
/// one that stays behind, one closed. Passages are drawn from a seeded source; what they told is made up beside them.
/// </summary>
internal static class SampleFarm
{
    public const int LegSpreadInThousandths = 6;

    /// <summary>Fills the store.</summary>
    /// <param name="farm">An empty farm.</param>
    /// <param name="days">How many days of history each cow of interest has.</param>
    /// <param name="others">How many further cows there are, each with a day of history.</param>
    public static async Task FillAsync(FarmHost farm, int days = 75, int others = 20)
    {
        var flagged = new (string Cow, Leg Leg, double Drop, int OnsetDaysAgo, int RaisedDaysAgo, Urgency Urgency, AlertPattern Pattern, int LastSeenHoursAgo)[]
        {
            ("417", Leg.Rh, 22, 9, 2, Urgency.Today, AlertPattern.OneLeg, 1),
            ("87", Leg.Lh, 15, 6, 1, Urgency.Today, AlertPattern.OneLeg, 1),
            ("1203", Leg.Rf, 13, 5, 0, Urgency.Today, AlertPattern.OneLeg, 1),
            ("62", Leg.Lh, 9, 14, 3, Urgency.NextVisit, AlertPattern.BothHind, 1),
            ("55", Leg.Lf, 6, 11, 1, Urgency.Watch, AlertPattern.OneLeg, 1),
            ("301", Leg.Rh, 31, 4, 2, Urgency.Today, AlertPattern.OneLeg, 38),
        };
        var cows = flagged.Select((f, i) => Some.Cow(f.Cow, 1000 + i, pen: $"{1 + (i % 3)}"))
            .Concat(Enumerable.Range(0, others).Select(i => Some.Cow($"{500 + i}", 2000 + i, pen: $"{1 + (i % 3)}"))).ToArray();
        await farm.RegisterAsync(cows);

        var random = new Random(20260610);
        var passages = new List<DevicePassage>();
        var told = new List<PassageAssessment>();
        for (var i = 0; i < flagged.Length; i++)
        {
            var f = flagged[i];
            History(random, f.Cow, 1000 + i, f.Leg, f.Drop, f.OnsetDaysAgo, f.Pattern, days, f.LastSeenHoursAgo, passages, told);
        }

        for (var i = 0; i < others; i++)
            History(random, $"{500 + i}", 2000 + i, Leg.Lf, 0, 0, AlertPattern.OneLeg, days: 1, lastSeenHoursAgo: 1, passages, told);
        foreach (var chunk in passages.Chunk(5000))
            await farm.PassAsync(chunk);
        await farm.ChangeAsync(state => state.WriteAssessmentsAsync(told));

        var alerts = flagged.Select(f => Some.Alert(
            f.Cow, f.Leg, Some.Now.AddDays(-f.RaisedDaysAgo).AddHours(-1), f.Drop, f.Urgency, f.Pattern, Some.Now.AddDays(-f.OnsetDaysAgo))).ToArray();
        await farm.RaiseAsync(alerts);
        var earlier = Some.Alert("417", Leg.Lf, Some.Now.AddDays(-45), 8, Urgency.Today, onsetAt: Some.Now.AddDays(-52));
        await farm.RaiseAsync(earlier);
        await farm.ChangeAsync(state => state.WriteAlertStepsAsync(
            [
                new AlertChange(Some.Now.AddDays(-41), AlertChangeKind.Closed, earlier with
                {
                    State = AlertState.Closed, ClosedAt = Some.Now.AddDays(-41), CloseReason = AlertCloseReason.LiftedNothingFound,
                }),
            ]));
    }

    private static void History(
        Random random, string cow, int tag, Leg sore, double drop, int onsetDaysAgo, AlertPattern pattern, int days, int lastSeenHoursAgo,
        List<DevicePassage> passages, List<PassageAssessment> told)
    {
        var normal = new PerLeg<double>(0.272, 0.268, 0.228, 0.232);
        var evidence = 0.0;
        for (var halfDay = 2 * days; halfDay >= 0; halfDay--)
        {
            var at = Some.Now.AddHours((-12 * halfDay) - 1).AddSeconds(tag % 100 * 20);
            if (at > Some.Now.AddHours(-lastSeenHoursAgo).AddMinutes(40))
                continue;
            var age = (Some.Now - at).TotalDays;
            var part = onsetDaysAgo == 0 ? 0 : Math.Clamp((onsetDaysAgo - age) / onsetDaysAgo, 0, 1);
            var factor = 1 - (drop / 100 * part);
            var shares = PerLeg.From(leg => normal[leg] * (leg == sore || (pattern != AlertPattern.OneLeg && leg == sore.Opposite()) ? factor : 1));
            shares = shares.Select(share => share * (1 + (0.02 * Gauss(random))));
            var sum = shares.Lf + shares.Rf + shares.Lh + shares.Rh;
            var weight = 640 + (5 * Gauss(random));
            var refused = halfDay % 17 == 5;
            var passage = new DevicePassage(
                $"{cow}-{halfDay}", Some.Tag(tag), at, at.AddSeconds(4), shares.Select(share => share / sum * weight) is var loads && refused ? loads with { Lf = 0 } : loads);
            passages.Add(passage);
            if (refused)
                continue;
            evidence = Math.Clamp(evidence + (0.25 * part) - 0.03 + (0.02 * Gauss(random)), 0, 1.6);
            told.Add(new PassageAssessment
            {
                PassageId = $"{Some.Platform}.{passage.DeviceId}",
                Cow = cow,
                At = passage.EndedAt,
                Baseline = evidence > 1 ? BaselineState.Frozen : BaselineState.Watching,
                ExpectedShare = normal,
                ShareSpread = PerLeg.From(_ => LegSpreadInThousandths / 1000.0),
                OneLegEvidence = PerLeg.From(leg => pattern == AlertPattern.OneLeg && leg == sore ? evidence : 0.04 * random.NextDouble()),
                BothHindEvidence = pattern == AlertPattern.BothHind ? evidence : 0,
            });
        }
    }

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
