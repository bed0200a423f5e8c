using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Barn.Tests.Analysis;

/// <summary>What single kinds of input do to the state.</summary>
public class HerdWorkerTests
{
    private static readonly Eid Tag = Eid.Parse("982000123456789");

    private static readonly Lazy<List<Input>> History = new(() => Scenario.History(seed: 6, cows: 16, days: 100, cases: 200));

    // The first crossing of these is a good one, with its tag.
    private static readonly Lazy<List<Input>> Crossings = new(() => Scenario.Crossings(seed: 3, cows: 10, crossings: 30, from: Some.Now));

    private static DevicePassageInput Passage(string id, DateTimeOffset at, Eid? eid = null, double lh = 139) =>
        new("parlour-exit", new DevicePassage(id, eid ?? Tag, at, at.AddSeconds(4), new PerLeg<double>(168, 166, lh, 141)));

    private static WriteInput Register(string cow, DateTimeOffset from, Eid? eid, DateTimeOffset entered, DateOnly? calvedOn = null, DateOnly? leftOn = null) =>
        new(new RegisterWrite(entered, new CowRegistration(cow, from) { Eid = eid, CalvedOn = calvedOn, LeftOn = leftOn, EnteredAt = entered }));

    private static async Task<PassageView[]> PassagesAsync(Folding folding) => [.. await folding.Store.Reader.PassagesAsync(null, null, null, null, Page.All)];

    [Fact]
    public async Task A_devices_passage_becomes_a_passage_with_an_assessment()
    {
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync([Passage("px-1", Some.Now)]);
        var passage = Assert.Single(await PassagesAsync(folding));
        Assert.Equal(("parlour-exit.px-1", "accepted", "982000123456789"), (passage.Id, passage.Quality, passage.Cow));
        Assert.Equal(passage.Id, Assert.Single(await folding.Store.Reader.AssessmentsOfAsync("982000123456789", null, null)).PassageId);
    }

    [Fact]
    public async Task A_registration_takes_over_the_passages_of_its_tag()
    {
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync([Passage("px-1", Some.Now), Passage("px-2", Some.Now.AddDays(1))]);
        await folding.AllAsync([Register("417", Some.Now.AddDays(2), Tag, Some.Now.AddDays(2))]);
        Assert.All(await PassagesAsync(folding), passage => Assert.Equal("417", passage.Cow));
        Assert.Equal(2, (await folding.Store.Reader.AssessmentsOfAsync("417", null, null)).Count);
        Assert.Empty(await folding.Store.Reader.AssessmentsOfAsync("982000123456789", null, null));
    }

    [Fact]
    public async Task Of_two_different_passages_under_one_id_one_is_used_and_nothing_of_the_other_stays()
    {
        Input[] first = [Passage("px-1", Some.Now, lh: 139), Passage("px-2", Some.Now.AddDays(3), lh: 140)];
        Input[] second = [Passage("px-1", Some.Now.AddDays(5), lh: 120)];
        await using var one = await Folding.OpenAsync();
        await one.AllAsync(first);
        var forwards = await one.AllAsync(second);
        await using var other = await Folding.OpenAsync();
        await other.AllAsync(second);
        Fingerprint.Same(forwards, await other.AllAsync(first), "conflicting ids");
        Assert.Equal("conflicting-duplicate", Assert.Single(await one.Store.Reader.RejectedAsync(null, null, Page.All)).Reason);
    }

    /// <summary>The dial holds for the past too: a service started again under another budget has what one has that never knew the first.</summary>
    [Fact]
    public async Task A_changed_dial_holds_for_the_past_too()
    {
        static BarnOptions With(double budget) => Some.Options with { Lameness = Some.Options.Lameness with { FalseAlertsPer100CowsPerWeek = budget } };
        var inputs = Scenario.History(seed: 6, cows: 16, days: 50, cases: 200);
        await using var folding = await Folding.OpenAsync(With(1));
        var asBefore = await folding.AllAsync(inputs);
        await folding.RestartAsync(With(30));
        var after = await folding.AllAsync([]);
        await using var fresh = await Folding.OpenAsync(With(30));
        Fingerprint.Same(await fresh.AllAsync(inputs), after, "the dial turned later");
        Assert.NotEqual(asBefore, after);
        // Turned back, all is as it was.
        await folding.RestartAsync(With(1));
        Fingerprint.Same(asBefore, await folding.AllAsync([]), "the dial turned back");
    }

    [Fact]
    public async Task Closing_an_alert_shows_at_once_and_survives_late_data()
    {
        var inputs = History.Value;
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync(inputs);
        var open = (await folding.Store.Reader.AlertsAsync(null, null, null, null, Page.All)).First(alert => alert.State == "open");
        var at = (await folding.Store.Reader.NewestAsync()).AddMinutes(30).AddTicks(4321);
        var close = Scenario.Close(open, at);
        await folding.AllAsync([close]);
        Assert.Equal("closed", (await folding.Store.Reader.AlertAsync(open.Id))!.Alert!.State);

        // A passage that comes later but belongs before the closing has all of it folded again.
        var late = Passage("late", at.AddMinutes(-10));
        var expected = await folding.AllAsync([late]);
        await using var plain = await Folding.OpenAsync();
        Fingerprint.Same(expected, await plain.AllAsync([close, late, .. inputs]), "closing first");
        Assert.Equal("closed", (await folding.Store.Reader.AlertAsync(open.Id))!.Alert!.State);
    }

    [Fact]
    public async Task An_event_dated_ahead_waits_until_event_time_gets_there()
    {
        await using var folding = await Folding.OpenAsync();
        var ahead = DateOnly.FromDateTime(Some.Now.UtcDateTime).AddDays(2);
        await folding.AllAsync([Register("417", Some.Now, Tag, Some.Now, leftOn: ahead), Passage("px-1", Some.Now)]);
        // Had the departure been folded, this passage would have had the past folded again from before it.
        var expected = await folding.AllAsync([Passage("px-2", Some.Now.AddDays(1)), Passage("px-3", Some.Now.AddDays(5))]);
        await using var plain = await Folding.OpenAsync();
        Fingerprint.Same(
            expected,
            await plain.AllAsync([Passage("px-3", Some.Now.AddDays(5)), Passage("px-2", Some.Now.AddDays(1)), Passage("px-1", Some.Now), Register("417", Some.Now, Tag, Some.Now, leftOn: ahead)]),
            "dated ahead");
    }

    [Fact]
    public async Task A_crossing_has_the_tag_read_before_it_even_when_the_read_comes_late()
    {
        var inputs = Crossings.Value;
        var tag = inputs.OfType<TagInput>().First();
        var frames = inputs.OfType<FrameInput>().TakeWhile(frame => frame.Frame.T0 < tag.Read.At.AddSeconds(8)).ToArray();
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync(frames);
        var nobodys = (await PassagesAsync(folding))[0];
        Assert.Null(nobodys.Eid);
        Assert.Contains("no-tag", nobodys.Reasons);
        await folding.AllAsync([tag]);
        var hers = (await PassagesAsync(folding)).Single(passage => passage.Id == nobodys.Id);
        Assert.Equal(tag.Read.Eid.ToString(), hers.Eid);
        Assert.DoesNotContain("no-tag", hers.Reasons);
    }

    [Fact]
    public async Task A_crossing_is_not_told_before_it_is_over_and_is_over_when_the_recording_begins_anew()
    {
        // Frames of the first crossing up to the middle of it, then nothing, then the next crossing half a minute on.
        var all = Crossings.Value.OfType<FrameInput>().ToArray();
        await using var whole = await Folding.OpenAsync();
        await whole.AllAsync(all);
        var first = (await PassagesAsync(whole))[0];
        var middle = first.StartedAt + ((first.EndedAt - first.StartedAt) / 2);
        var begun = all.Where(frame => frame.Frame.End <= middle).ToArray();
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync(begun);
        Assert.Empty(await PassagesAsync(folding));
        await folding.AllAsync([.. all.Where(frame => frame.Frame.T0 > first.EndedAt.AddSeconds(90))]);
        var broken = (await PassagesAsync(folding))[0];
        Assert.InRange((first.StartedAt - broken.StartedAt).Duration(), TimeSpan.Zero, TimeSpan.FromSeconds(0.1));
        Assert.Equal("gap-in-frames", broken.Reasons[0]);

        // The missing part comes late: the crossing is measured as if it had come in time.
        await folding.AllAsync([.. all.Where(frame => frame.Frame.End > middle && frame.Frame.T0 <= first.EndedAt.AddSeconds(90))]);
        var repaired = await Fingerprint.OfAsync(folding.Store);
        Fingerprint.Same(await Fingerprint.OfAsync(whole.Store), repaired, "repaired");
    }

    [Fact]
    public async Task A_load_left_standing_for_longer_than_any_crossing_leaves_no_passage_however_it_came()
    {
        var frames = Enumerable.Range(0, 13 * 60).Select(second => Standing(second, second is < 5 or > 770 ? 0 : 80)).ToArray();
        await using var plain = await Folding.OpenAsync();
        var expected = await plain.AllAsync(frames);
        Assert.Empty(await PassagesAsync(plain));
        await using var rough = await Folding.OpenAsync();
        var random = new Random(1);
        var shuffled = frames.ToArray();
        random.Shuffle(shuffled);
        foreach (var chunk in shuffled.Chunk(97))
            await rough.AllAsync(chunk);
        Fingerprint.Same(expected, await Fingerprint.OfAsync(rough.Store), "a standing load");
    }

    [Fact]
    public async Task Frames_beyond_their_days_are_removed_and_later_ones_of_that_age_are_refused()
    {
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync([Standing(0, 0)]);
        Assert.True(folding.Store.Progress.FramesKeptFrom < Some.Now);
        await folding.AllAsync([Passage("px-1", Some.Now.AddDays(40))]);
        Assert.Equal(Some.Options.Calendar.StartOf(new DateOnly(2026, 3, 12)), folding.Store.Progress.FramesKeptFrom);
        Assert.Empty(await folding.Store.Reader.FramesAsync("parlour-exit", 4, Some.Now.AddDays(-1), Some.Now.AddDays(1)));
        var result = await folding.Store.Inputs.AppendAsync([Standing(10, 0)]);
        Assert.Equal(1, result.Rejected);
    }

    [Fact]
    public async Task A_clock_far_ahead_removes_no_frames()
    {
        await using var folding = await Folding.OpenAsync();
        await folding.AllAsync([Standing(0, 0), Passage("px-1", new DateTimeOffset(2190, 1, 1, 0, 0, 0, TimeSpan.Zero))]);
        Assert.True(folding.Store.Progress.FramesKeptFrom < Some.Now);
    }

    [Fact]
    public async Task Frames_of_a_platform_that_is_not_set_up_are_kept_and_do_no_harm()
    {
        await using var folding = await Folding.OpenAsync();
        var frame = Standing(0, 0).Frame;
        await folding.AllAsync([new FrameInput("gone", frame), new TagInput("gone", new TagRead(Some.Now, Tag)), Passage("px-1", Some.Now)]);
        Assert.Single(await PassagesAsync(folding));
    }

    [Fact]
    public async Task A_saved_fold_of_another_version_has_everything_folded_again()
    {
        await using var folding = await Folding.OpenAsync();
        var expected = await folding.AllAsync(History.Value);
        await using (var change = await folding.Store.BeginAsync())
        {
            await change.ForgetFromAsync(DateTimeOffset.MinValue);
            await change.WriteCheckpointAsync(Some.Now, [1, 2, 3]);
            await change.CommitAsync(folding.Store.Progress.Folded);
        }

        await folding.RestartAsync();
        await folding.Worker.CatchUpAsync();
        Fingerprint.Same(expected, await Fingerprint.OfAsync(folding.Store), "folded again");
    }

    [Fact]
    public async Task A_change_that_fails_midway_leaves_nothing_and_is_made_whole_the_next_time()
    {
        await using var folding = await Folding.OpenAsync();
        await folding.AppendAsync([.. History.Value.Take(1500)]);
        await folding.Worker.CatchUpAsync();
        await folding.AppendAsync([.. History.Value.Skip(1500)]);
        using (var stop = new CancellationTokenSource())
        {
            await stop.CancelAsync();
            await Assert.ThrowsAnyAsync<OperationCanceledException>(() => folding.Worker.RunOnceAsync(stop.Token));
        }

        await folding.Worker.CatchUpAsync();
        await using var plain = await Folding.OpenAsync();
        Fingerprint.Same(await plain.AllAsync(History.Value), await Fingerprint.OfAsync(folding.Store), "after a failure");
    }

    [Fact]
    public async Task A_passage_that_cannot_be_folded_is_set_aside_with_its_name_and_holds_up_no_other()
    {
        // A share too small for a double: its logarithm is none.
        var poison = new DevicePassageInput("parlour-exit", new DevicePassage(
            "px-2", Tag, Some.Now.AddHours(1), Some.Now.AddHours(1).AddSeconds(4), new PerLeg<double>(double.Epsilon, 166, 139, 141)));
        await using var folding = await Folding.OpenAsync();
        var with = await folding.AllAsync([Passage("px-1", Some.Now), poison, Passage("px-3", Some.Now.AddHours(2))]);
        var setAside = Assert.Single(await folding.Store.Reader.RejectedAsync(null, null, Page.All));
        Assert.Equal(("parlour-exit.px-2", "analysis-failed"), (setAside.Topic, setAside.Reason));
        Assert.Equal("parlour-exit.px-2 at 2026-03-02T07:00:04.000Z cannot be folded. It is left out: a defect of GaitWatch, please report it.", setAside.Detail);
        await using var without = await Folding.OpenAsync();
        Fingerprint.Same(
            [.. (await without.AllAsync([Passage("px-1", Some.Now), Passage("px-3", Some.Now.AddHours(2))])).Where(line => line.StartsWith("assessment", StringComparison.Ordinal))],
            [.. with.Where(line => line.StartsWith("assessment", StringComparison.Ordinal))],
            "without it");
    }

    [Fact]
    public async Task An_input_at_which_the_analysis_fails_again_and_again_is_set_aside_and_what_follows_is_folded()
    {
        await using var folding = await Folding.OpenAsync();
        await folding.AppendAsync([
            .. Enumerable.Range(0, 40).Select(n => Passage($"px-{n}", Some.Now.AddMinutes(n))),
            new TagInput("parlour-exit", new TagRead(Some.Now, Tag)),
            .. Enumerable.Range(40, 40).Select(n => Passage($"px-{n}", Some.Now.AddMinutes(n)))]);
        await DamageTagsAsync(folding);
        await folding.Worker.CatchUpAsync();
        Assert.Equal(80, (await PassagesAsync(folding)).Length);
        var setAside = Assert.Single(await folding.Store.Reader.RejectedAsync(null, null, Page.All));
        Assert.Equal("tag of 'parlour-exit' at 2026-03-02T06:00:00.000Z could not be analysed: a defect of GaitWatch, please report it.", setAside.Detail);
        Assert.Equal(folding.Store.Progress.Appended, folding.Store.Progress.Folded);
    }

    /// <summary>Makes every tag in the store one that no reader can have sent.</summary>
    private static async Task DamageTagsAsync(Folding folding)
    {
        await using var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={Path.Combine(folding.Folder, BarnStore.FileName)}");
        await connection.OpenAsync();
        await using var command = connection.CreateCommand();
        command.CommandText = """UPDATE tags SET "Eid" = 5""";
        Assert.Equal(1, await command.ExecuteNonQueryAsync());
    }

    /// <summary>A second of the platform with a steady load on it.</summary>
    private static FrameInput Standing(int second, float kgPerCell)
    {
        var random = new Random(second);
        var samples = Enumerable.Range(0, 4).Select(_ => Enumerable.Range(0, 200).Select(_ => kgPerCell + (float)(random.NextDouble() - 0.5)).ToArray()).ToArray();
        return new FrameInput("parlour-exit", new Frame(second, Some.Now.AddSeconds(second), 200, samples));
    }
}
