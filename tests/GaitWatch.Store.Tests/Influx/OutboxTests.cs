using CsCheck;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

public sealed class OutboxTests
{
    private const string Tag = "999000000000417";

    private static CancellationToken Now => CancellationToken.None;

    [Fact]
    public async Task Without_an_export_nothing_is_kept_for_one()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [TempStore.Passage("p.a", TempStore.Day, Tag)], true, HerdRegister.Empty));
        await temp.Store.Inputs.AppendAsync([new StatusInput("parlour-exit", true, TempStore.Day, "2.1.0")]);
        Assert.Equal(0, temp.Store.Series.Pending);
        await Assert.ThrowsAsync<InvalidOperationException>(() => temp.Store.Backfill.StartAsync(null));
    }

    [Fact]
    public async Task What_was_not_committed_is_not_sent()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        await using (var change = await temp.Store.BeginAsync())
            await change.ReplacePassagesAsync([], [TempStore.Passage("p.a", TempStore.Day, Tag)], true, HerdRegister.Empty);
        Assert.Equal(0, temp.Store.Series.Pending);
        Assert.Empty(await temp.Store.Series.ReadAsync(10, Now));
    }

    [Fact]
    public async Task A_late_register_moves_the_points_to_the_cow_and_leaves_none_behind()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        var influx = new ModelInflux();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [TempStore.Passage("p.a", TempStore.Day, Tag)], true, HerdRegister.Empty));
        await influx.DrainAsync(temp.Store.Series);
        Assert.All(influx.Shown, line => Assert.Contains($"cow={Tag}", line, StringComparison.Ordinal));

        var register = new HerdRegister([new CowRegistration("417", TempStore.Day) { Eid = Eid.Parse(Tag) }]);
        await temp.ChangeAsync(state => state.ReassignAsync([Eid.Parse(Tag)], register));
        await influx.DrainAsync(temp.Store.Series);
        Assert.Equal(5, influx.Count);
        Assert.All(influx.Shown, line => Assert.Contains("cow=417", line, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_figure_that_is_taken_back_is_gone()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        var influx = new ModelInflux();
        var passage = TempStore.Passage("p.a", TempStore.Day, Tag);
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [passage], true, HerdRegister.Empty));
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [passage with { WeightKg = null }], true, HerdRegister.Empty));
        await influx.DrainAsync(temp.Store.Series);
        Assert.DoesNotContain("weight_kg", influx.Shown.Single(line => line.StartsWith("passage,", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_passage_folded_again_to_the_same_end_sends_nothing()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        var passage = TempStore.Passage("p.a", TempStore.Day, Tag);
        var told = PointTests.Told(passage) with { Cow = Tag };
        await temp.ChangeAsync(async state =>
        {
            await state.ReplacePassagesAsync([], [passage], true, HerdRegister.Empty);
            await state.WriteAssessmentsAsync([told]);
        });
        await new ModelInflux().DrainAsync(temp.Store.Series);
        await temp.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(TempStore.Day);
            await state.WriteAssessmentsAsync([told]);
            await state.SettleRevisionAsync(TempStore.Day);
        });
        Assert.Equal(0, temp.Store.Series.Pending);
    }

    [Fact]
    public async Task A_corrected_finding_takes_the_place_of_the_first()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        var influx = new ModelInflux();
        var finding = new Finding { Id = "f-1", Cow = "417", At = TempStore.Day, Foot = Leg.Rh, Lesion = Lesion.SoleUlcer, Severity = 2, Actions = [FindingAction.Trimmed, FindingAction.Block] };
        await EnterAsync(temp, new RegisterWrite(TempStore.Day, new CowRegistration("417", TempStore.Day) { Pen = "2" }), new FindingWrite(finding, TempStore.Day));
        await EnterAsync(temp, new FindingCorrectionWrite(finding with { Foot = Leg.Lh, Severity = null }, TempStore.Day.AddHours(1)));
        await influx.DrainAsync(temp.Store.Series);
        var line = Assert.Single(influx.Shown);
        Assert.StartsWith("finding,cow=417,farm=home,finding=f-1,foot=lh,lesion=SU,pen=2 ", line, StringComparison.Ordinal);
        Assert.DoesNotContain("severity", line, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_point_is_set_aside_with_the_reason_and_holds_up_no_other()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        var influx = new ModelInflux { IsBad = line => line.Contains("\"p.7\"", StringComparison.Ordinal) };
        await WriteAsync(temp, 0, 20);
        await influx.DrainAsync(temp.Store.Series, 64);
        var aside = Assert.Single(await temp.Store.Series.SetAsideAsync(Page.All));
        Assert.Contains("p.7", aside.Body, StringComparison.Ordinal);
        Assert.Equal("400: partial write", aside.Reason);
        Assert.Equal((20 * 5) - 1, influx.Count);
        Assert.Equal((100, 1), (temp.Store.Series.State.Sent, temp.Store.Series.State.Refused));
    }

    [Fact]
    public async Task While_nobody_answers_everything_waits_also_over_a_restart_and_is_then_sent_once()
    {
        await using var temp = await TempStore.OpenAsync(exportSeries: true);
        var influx = new ModelInflux();
        await WriteAsync(temp, 0, 10);
        foreach (var status in new[] { 0, 503, 401 })
            influx.Answers.Enqueue(status);
        var sender = new SeriesSender(temp.Store.Series, influx, 20, TimeProvider.System, () => 1);
        foreach (var seconds in new[] { 1, 2, 4 })
            Assert.Equal(seconds, (await sender.SendAsync(Now))!.Value.TotalSeconds);
        Assert.Equal((3, true), (temp.Store.Series.State.Failures, temp.Store.Series.State.Fault!.Contains("GaitWatch:Influx:Token", StringComparison.Ordinal)));
        Assert.True(temp.Store.Series.Lag > TimeSpan.Zero);
        Assert.Equal(50, temp.Store.Series.Pending);

        await temp.ReopenAsync(exportSeries: true);
        Assert.Equal(50, temp.Store.Series.Pending);
        await WriteAsync(temp, 10, 12);
        await influx.DrainAsync(temp.Store.Series, 20);
        Assert.Equal(60, influx.Count);
        Assert.Equal(TimeSpan.Zero, temp.Store.Series.Lag);
    }

    /// <summary>
    /// The law of the export: what InfluxDB shows after any course of changes, told one by one, is what it shows when the state is
    /// told anew from nothing.
    /// </summary>
    [Fact]
    public async Task Told_step_by_step_or_anew_it_is_the_same() =>
        await Gen.Select(Gen.Int[0, 8], Gen.Int[0, 5], Gen.Int[0, 3]).Array[1, 25].SampleAsync(
            async steps =>
            {
                await using var temp = await TempStore.OpenAsync(exportSeries: true);
                var influx = new ModelInflux();
                foreach (var (kind, which, how) in steps)
                {
                    await StepAsync(temp, kind, which, how);
                    if (how == 0)
                        await influx.DrainAsync(temp.Store.Series, 7);
                }

                await influx.DrainAsync(temp.Store.Series, 7);
                var shown = influx.Shown;
                var anew = new ModelInflux();
                await temp.Store.Backfill.StartAsync(null);
                do
                    await anew.DrainAsync(temp.Store.Series);
                while (await temp.Store.Backfill.StepAsync(Now) || temp.Store.Series.Pending > 0);
                Assert.Equal(anew.Shown, shown);

                // And told over what is there already it changes nothing.
                await temp.Store.Backfill.StartAsync(null);
                do
                    await influx.DrainAsync(temp.Store.Series);
                while (await temp.Store.Backfill.StepAsync(Now) || temp.Store.Series.Pending > 0);
                Assert.Equal(anew.Shown, influx.Shown);
            },
            iter: 40, threads: 1);

    private static async Task StepAsync(TempStore temp, int kind, int which, int how)
    {
        var at = TempStore.Day.AddHours(which);
        var passage = TempStore.Passage($"p.{which}", at, how == 1 ? null : $"99900000000000{how}", how == 3 ? [QualityReason.Stopped] : how == 1 ? [QualityReason.NoTag] : []);
        switch (kind)
        {
            case 0 or 1:
                await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [passage with { WeightKg = which > 3 ? null : 600 + how }], true, HerdRegister.Empty));
                break;
            case 2:
                await temp.ChangeAsync(state => state.ReplacePassagesAsync([$"p.{which}"], [], true, HerdRegister.Empty));
                break;
            case 3:
                await temp.ChangeAsync(async state =>
                {
                    var there = await state.CrossingsAsync("parlour-exit", at, at.AddHours(2));
                    await state.ForgetFromAsync(at.AddSeconds(4));
                    await state.WriteAssessmentsAsync(
                    [
                        .. there.Where(one => one.IsAccepted).Select(one => PointTests.Told(one, how == 2 ? [QualityReason.WeightImplausible] : []) with { ExpectedShare = how == 0 ? null : new PerLeg<double>(0.27, 0.27, 0.23, 0.23) }),
                    ]);
                    await state.SettleRevisionAsync(at);
                });
                break;
            case 4:
                await temp.ChangeAsync(state => state.WriteAlertStepsAsync([new AlertChange(at, (AlertChangeKind)how, TempStore.Alert($"a-{which % 2}", $"{which % 2}", TempStore.Day, 10 + how))]));
                break;
            case 5:
                await EnterAsync(temp, new RegisterWrite(at, new CowRegistration($"{which % 3}", at) { Eid = Eid.Parse($"99900000000000{how}"), Pen = $"{how}", EnteredAt = at }));
                await temp.ChangeAsync(async state => await state.ReassignAsync([Eid.Parse($"99900000000000{how}")], await state.RegisterAsync()));
                break;
            case 6:
                await temp.ChangeAsync(state => state.WriteZerosAsync("parlour-exit", [new ZeroLevels(at.AddMinutes(-how), [0.1 * how, 0.2, 0.3, 0.4])]));
                break;
            case 7:
                var recovery = new RecoveryAssessment
                {
                    FindingId = $"f-{which % 2}", Cow = "1", Foot = Leg.Rh, TreatedAt = at, Status = RecoveryStatus.Recovering, DropPercentNow = how == 0 ? null : how, Explanation = "Because.",
                    Days = [.. Enumerable.Range(0, how).Select(day => new DailyDrop(new DateOnly(2026, 3, 3).AddDays(day), day, 5, 2, false, false))],
                };
                await temp.ChangeAsync(state =>
                {
                    state.WriteRecoveries("1", new HashSet<string> { recovery.FindingId }, how == 3 ? [] : [recovery]);
                    return Task.CompletedTask;
                });
                break;
            default:
                var finding = new Finding { Id = $"f-{which % 2}", Cow = $"{which % 3}", At = at, Foot = Leg.Rh, Lesion = how > 1 ? Lesion.SoleUlcer : Lesion.None };
                await EnterAsync(temp, how % 2 == 0 ? new FindingWrite(finding, at) : new FindingCorrectionWrite(finding with { Zone = 4 }, at.AddMinutes(how)));
                break;
        }
    }

    private static async Task WriteAsync(TempStore temp, int from, int to) => await temp.ChangeAsync(state => state.ReplacePassagesAsync(
        [], [.. Enumerable.Range(from, to - from).Select(i => TempStore.Passage($"p.{i}", TempStore.Day.AddMinutes(i), Tag))], true, HerdRegister.Empty));

    private static async Task EnterAsync(TempStore temp, params FarmWrite[] writes)
    {
        var appended = await temp.Store.Inputs.AppendAsync([.. writes.Select(write => new WriteInput(write))]);
        await temp.ChangeAsync(_ => Task.CompletedTask, appended.LastSeq);
    }
}
