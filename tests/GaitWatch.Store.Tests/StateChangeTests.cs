using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store.Tests;

public sealed class StateChangeTests
{
    private const string Tag = "999000000000417";
    private static readonly DateTimeOffset Noon = TempStore.Day.AddHours(12);
    private static readonly HerdRegister Register = new([new CowRegistration("417", Noon) { Eid = Eid.Parse(Tag), Pen = "2" }]);

    [Fact]
    public async Task A_passage_comes_back_with_every_figure_and_every_null()
    {
        await using var temp = await TempStore.OpenAsync();
        var written = TempStore.Passage("parlour-exit.a", Noon, Tag);
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], [written], fromFrames: true, Register));

        var read = Assert.Single(await temp.ChangeAsync(state => state.CrossingsAsync("parlour-exit", Noon, Noon.AddSeconds(1))));
        Assert.Equal(written with { Reasons = [] }, read with { Reasons = [] });
        var view = await temp.Store.Reader.PassageAsync("parlour-exit.a");
        Assert.NotNull(view);
        Assert.Equal(("417", "accepted", written.Legs), (view.Cow, view.Quality, view.Legs));
    }

    [Fact]
    public async Task The_history_is_in_its_order_and_leaves_out_what_is_no_evidence()
    {
        await using var temp = await TempStore.OpenAsync();
        Passage[] passages =
        [
            TempStore.Passage("p.c", Noon.AddMinutes(2), Tag), TempStore.Passage("p.b", Noon.AddMinutes(1), Tag), TempStore.Passage("p.a", Noon.AddMinutes(1), Tag),
            TempStore.Passage("p.rejected", Noon.AddMinutes(3), Tag, QualityReason.Stopped), TempStore.Passage("p.nobody", Noon.AddMinutes(3), null, QualityReason.NoTag),
            TempStore.Passage("p.early", Noon.AddMinutes(-1), Tag),
        ];
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], passages, fromFrames: false, Register));

        var ids = await temp.ChangeAsync(async state =>
        {
            var found = new List<string>();
            await foreach (var input in state.HistoryAsync(Noon))
                found.Add(input.Passage.Id);
            return found;
        });
        Assert.Equal(["p.a", "p.b", "p.c"], ids);
    }

    [Fact]
    public async Task A_history_longer_than_a_slice_is_whole_even_where_many_ended_at_once()
    {
        await using var temp = await TempStore.OpenAsync();
        var passages = Enumerable.Range(0, 12_345).Select(i => TempStore.Passage($"p.{i:D5}", Noon.AddSeconds(i / 7), Tag)).ToArray();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync([], passages, fromFrames: false, Register));

        var ids = await temp.ChangeAsync(async state =>
        {
            var found = new List<string>();
            await foreach (var input in state.HistoryAsync(Noon))
                found.Add(input.Passage.Id);
            return found;
        });
        Assert.Equal(passages.Select(passage => passage.Id), ids);
    }

    [Fact]
    public async Task A_tag_registered_later_moves_her_passages_and_tells_from_when()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(state => state.ReplacePassagesAsync(
            [], [TempStore.Passage("p.a", Noon, Tag), TempStore.Passage("p.b", Noon.AddDays(1), Tag)], fromFrames: false, HerdRegister.Empty));
        Assert.Equal(Tag, Assert.Single(await temp.Store.Reader.CowsAsync(Page.All)).Cow);

        var earliest = await temp.ChangeAsync(state => state.ReassignAsync([Eid.Parse(Tag)], Register));
        Assert.Equal(Noon.AddSeconds(4), earliest);
        Assert.Equal(2, (await temp.Store.Reader.PassagesOfAsync("417", null, null, Page.All)).Count);
        Assert.Equal("417", Assert.Single(await temp.Store.Reader.CowsAsync(Page.All)).Cow);
        Assert.Null(await temp.ChangeAsync(state => state.ReassignAsync([Eid.Parse(Tag)], Register)));
    }

    [Fact]
    public async Task What_is_not_committed_never_was()
    {
        await using var temp = await TempStore.OpenAsync();
        await using (var state = await temp.Store.BeginAsync())
            await state.ReplacePassagesAsync([], [TempStore.Passage("p.a", Noon, Tag)], fromFrames: false, Register);
        Assert.Null(await temp.Store.Reader.PassageAsync("p.a"));
    }

    [Fact]
    public async Task Her_own_history_can_refuse_a_passage_that_the_gait_analysis_accepted()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(async state =>
        {
            await state.ReplacePassagesAsync([], [TempStore.Passage("p.a", Noon, Tag)], fromFrames: false, Register);
            await state.WriteAssessmentsAsync([Assessment("p.a", Noon, QualityReason.WrongCowSuspected)]);
        });
        var view = Assert.Single(await temp.Store.Reader.PassagesAsync(null, null, null, accepted: false, Page.All));
        Assert.Equal(["wrong-cow-suspected"], view.Reasons);
        Assert.Empty(await temp.Store.Reader.PassagesAsync(null, null, null, accepted: true, Page.All));
    }

    [Fact]
    public async Task An_assessment_comes_back_with_every_figure_and_every_null()
    {
        await using var temp = await TempStore.OpenAsync();
        PassageAssessment[] written =
        [
            Assessment("p.a", Noon) with
            {
                ExpectedShare = new PerLeg<double>(0.27, 0.28, 0.22, 0.23), ShareSpread = new PerLeg<double>(0.01, 0.011, 0.012, 0.013),
                Residual = new Balances(0.1, -0.2, 0.3), CommonMovement = new Balances(0.01, 0.02, -0.03),
                OneLegEvidence = new PerLeg<double>(0.1, 0.2, 0.3, 1.4), BothHindEvidence = 0.5, BothForeEvidence = 0.6,
            },
            Assessment("p.b", Noon.AddSeconds(1)),
        ];
        await temp.ChangeAsync(state => state.WriteAssessmentsAsync(written));
        var read = await temp.Store.Reader.AssessmentsOfAsync("417", Noon, Noon.AddHours(1));
        Assert.Equal(written.Select(a => a with { Reasons = [] }), read.Select(a => a with { Reasons = [] }));
    }

    [Fact]
    public async Task Of_old_checkpoints_one_a_week_is_kept_and_the_newest_before_an_instant_is_found()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.ChangeAsync(async state =>
        {
            for (var day = 0; day < 60; day++)
                await state.WriteCheckpointAsync(TempStore.Day.AddDays(day), [(byte)day, 1, 2]);
        });
        var kept = await temp.ChangeAsync(async state =>
        {
            var heads = new List<int>();
            for (DateTimeOffset? before = null; await state.CheckpointBeforeAsync(before) is { } found; before = found.Head)
            {
                Assert.Equal([(byte)(found.Head - TempStore.Day).TotalDays, 1, 2], found.Saved);
                heads.Add((int)(found.Head - TempStore.Day).TotalDays);
            }

            return heads;
        });
        Assert.Equal(Enumerable.Range(0, 9).Select(back => 59 - back), kept.Take(9));
        Assert.All(kept.Skip(9).Zip(kept.Skip(10)), pair => Assert.Equal(7, pair.First - pair.Second));
        Assert.InRange(kept.Count, 15, 17);
    }

    private static PassageAssessment Assessment(string id, DateTimeOffset at, params QualityReason[] reasons) =>
        new() { PassageId = id, Cow = "417", At = at, Reasons = [.. reasons], Baseline = BaselineState.Watching };
}
