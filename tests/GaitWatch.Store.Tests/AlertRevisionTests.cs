using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

public sealed class AlertRevisionTests
{
    private static readonly DateTimeOffset Noon = TempStore.Day.AddHours(12);

    [Fact]
    public async Task Flags_are_worst_first_and_as_they_stood_at_the_end_of_the_day_asked_for()
    {
        await using var temp = await TempStore.OpenAsync();
        var first = TempStore.Alert("a-1", "87", Noon, 9);
        var second = TempStore.Alert("a-2", "417", Noon.AddMinutes(1), 21, Urgency.Today);
        var watched = TempStore.Alert("a-3", "5", Noon.AddMinutes(2), 30, Urgency.Watch);
        await temp.ChangeAsync(async state =>
        {
            await state.ReplacePassagesAsync([], [TempStore.Passage("p.a", Noon.AddDays(2), null)], false, HerdRegister.Empty);
            await state.WriteAlertStepsAsync([Raised(first), Raised(second), Raised(watched)]);
            await state.WriteAlertStepsAsync([new AlertChange(Noon.AddDays(1), AlertChangeKind.Worsened, first with { LoadDropPercent = 25 })]);
            await state.WriteAlertStepsAsync([new AlertChange(Noon.AddDays(1).AddHours(1), AlertChangeKind.Closed, Closed(second, Noon.AddDays(1).AddHours(1)))]);
        });
        var day = DateOnly.FromDateTime(Noon.UtcDateTime);
        Assert.Equal(["417", "87", "5"], (await temp.Store.Reader.FlagsAsync(day)).Select(flag => flag.Cow));
        Assert.Equal([("87", 25.0), ("5", 30.0)], (await temp.Store.Reader.FlagsAsync(day.AddDays(1))).Select(flag => (flag.Cow, flag.LoadDropPercent)));
        Assert.Equal(["87", "5"], (await temp.Store.Reader.FlagsAsync(day.AddDays(2))).Select(flag => flag.Cow));
        Assert.Empty(await temp.Store.Reader.FlagsAsync(day.AddDays(-1)));
    }

    [Fact]
    public async Task The_trim_list_leaves_out_those_only_watched_and_puts_today_first()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.WriteAlertStepsAsync(
        [
            Raised(TempStore.Alert("a-1", "87", Noon, 9, Urgency.Today)), Raised(TempStore.Alert("a-2", "417", Noon, 21, Urgency.Today)),
            Raised(TempStore.Alert("a-3", "5", Noon, 30, Urgency.Watch)),
        ]));
        var rows = (await temp.Store.Reader.TrimListAsync(null)).Rows;
        Assert.Equal([(1, "417"), (2, "87")], rows.Select(row => (row.Position, row.Cow)));
        Assert.All(rows, row => Assert.Equal("Lift both hind feet.", row.Note));
    }

    [Fact]
    public async Task A_past_folded_again_alike_changes_nothing()
    {
        await using var temp = await TempStore.OpenAsync();
        var alert = TempStore.Alert("a-1", "417", Noon, 14.2);
        await temp.ChangeAsync(state => state.WriteAlertStepsAsync([Raised(alert)]));
        await temp.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(Noon.AddHours(-1));
            await state.WriteAlertStepsAsync([Raised(alert)]);
            Assert.Empty(await state.SettleRevisionAsync(Noon.AddDays(1)));
        });
        Assert.Null((await temp.Store.Reader.AlertAsync("a-1"))!.Alert!.RevisedAt);
        Assert.Single(await temp.Store.Reader.AlertStepsAsync("a-1"));
    }

    [Fact]
    public async Task A_step_that_is_new_is_no_revision_and_one_that_changed_is()
    {
        await using var temp = await TempStore.OpenAsync();
        var alert = TempStore.Alert("a-1", "417", Noon, 14.2);
        await temp.ChangeAsync(state => state.WriteAlertStepsAsync([Raised(alert)]));
        await temp.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(Noon.AddHours(-1));
            await state.WriteAlertStepsAsync([Raised(alert), new AlertChange(Noon.AddDays(1), AlertChangeKind.Worsened, alert with { LoadDropPercent = 20 })]);
            await state.SettleRevisionAsync(Noon.AddDays(1));
        });
        Assert.Null((await temp.Store.Reader.AlertAsync("a-1"))!.Alert!.RevisedAt);
        await temp.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(Noon.AddHours(-1));
            await state.WriteAlertStepsAsync([Raised(alert with { LoadDropPercent = 13 })]);
            await state.SettleRevisionAsync(Noon.AddDays(2));
        });
        Assert.Equal(Noon.AddDays(2), (await temp.Store.Reader.AlertAsync("a-1"))!.Alert!.RevisedAt);
    }

    [Fact]
    public async Task An_alert_that_moved_in_time_leads_to_its_successor_and_one_that_vanished_is_known_as_withdrawn()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.WriteAlertStepsAsync(
            [Raised(TempStore.Alert("old", "417", Noon, 14)), Raised(TempStore.Alert("gone", "87", Noon, 14))]));
        await temp.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(Noon.AddHours(-1));
            await state.WriteAlertStepsAsync([Raised(TempStore.Alert("new", "417", Noon.AddHours(12), 14))]);
            Assert.Equal(["gone", "old"], (await state.SettleRevisionAsync(Noon.AddDays(1))).Order());
        });
        Assert.Equal(new AlertLookup(null, "new", false), await temp.Store.Reader.AlertAsync("old"));
        Assert.Equal(new AlertLookup(null, null, true), await temp.Store.Reader.AlertAsync("gone"));
        Assert.Equal(Noon.AddDays(1), (await temp.Store.Reader.AlertAsync("new"))!.Alert!.RevisedAt);
        Assert.Null(await temp.Store.Reader.AlertAsync("never-was"));
    }

    [Fact]
    public async Task An_alert_raised_before_the_fold_begins_again_keeps_its_earlier_steps()
    {
        await using var temp = await TempStore.OpenAsync();
        var alert = TempStore.Alert("a-1", "417", Noon, 14);
        await temp.ChangeAsync(state => state.WriteAlertStepsAsync(
            [Raised(alert), new AlertChange(Noon.AddDays(3), AlertChangeKind.Closed, Closed(alert, Noon.AddDays(3)))]));
        await temp.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(Noon.AddDays(2));
            await state.SettleRevisionAsync(Noon.AddDays(4));
        });
        var now = (await temp.Store.Reader.AlertAsync("a-1"))!.Alert!;
        Assert.Equal(("open", Noon.AddDays(4)), (now.State, now.RevisedAt));
    }

    private static AlertChange Raised(Alert alert) => new(alert.RaisedAt, AlertChangeKind.Raised, alert);

    private static Alert Closed(Alert alert, DateTimeOffset at) =>
        alert with { State = AlertState.Closed, ClosedAt = at, CloseReason = AlertCloseReason.LoadNormal };
}
