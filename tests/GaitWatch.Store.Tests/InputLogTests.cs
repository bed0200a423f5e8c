using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Store.Tests;

public sealed class InputLogTests
{
    private const string Platform = "parlour-exit";
    private static readonly DateTimeOffset Noon = TempStore.Day.AddHours(12);

    [Fact]
    public async Task A_frame_comes_back_as_it_was_written()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync([new FrameInput(Platform, Frame(Noon, 7, 0.4f))]);
        await temp.ReopenAsync();

        var frame = Assert.Single(await temp.Store.Reader.FramesAsync(Platform, 2, Noon.AddSeconds(-1), Noon.AddSeconds(1)));
        Assert.Equal(7, frame.Seq);
        Assert.Equal(Noon, frame.T0);
        Assert.Equal(200, frame.Hz);
        Assert.Equal([0.4f, -1.5f, 300.25f], frame.SamplesKg[0]);
        Assert.Equal([0f, float.MaxValue, 12f], frame.SamplesKg[1]);
    }

    [Fact]
    public async Task The_same_input_twice_is_stored_once_and_counted_as_duplicate()
    {
        await using var temp = await TempStore.OpenAsync();
        Input[] inputs =
        [
            new FrameInput(Platform, Frame(Noon, 7, 0.4f)), new TagInput(Platform, new TagRead(Noon, Eid.Parse("999000000000417"))),
            new DevicePassageInput(Platform, DevicePassage("px-1", 168.2)), new WriteInput(Registration("417")),
        ];
        var first = await temp.Store.Inputs.AppendAsync(inputs);
        var second = await temp.Store.Inputs.AppendAsync(inputs);

        Assert.Equal((4, 0, 0), (first.Stored, first.Duplicates, first.Rejected));
        Assert.Equal((0, 4, 0), (second.Stored, second.Duplicates, second.Rejected));
        var ingest = await temp.Store.Reader.IngestAsync();
        Assert.Equal((8L, 4L, 0L, 4L), (ingest.Received, ingest.Stored, ingest.Rejected, ingest.Duplicates));
    }

    [Theory]
    [InlineData(168.2, 170.0)]
    [InlineData(170.0, 168.2)]
    public async Task Of_two_passages_of_one_id_the_same_one_is_kept_whichever_came_first(double first, double second)
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync([new DevicePassageInput(Platform, DevicePassage("px-1", first))]);
        var result = await temp.Store.Inputs.AppendAsync([new DevicePassageInput(Platform, DevicePassage("px-1", second))]);

        Assert.Equal(1, result.Rejected);
        var batch = await temp.ChangeAsync(state => state.InputsAfterAsync(0, 100));
        Assert.Equal(168.2, Assert.Single(batch.Passages).Passage.LoadKg.Lf);
        var rejected = Assert.Single(await temp.Store.Reader.RejectedAsync(null, null, Page.All));
        Assert.Equal("conflicting-duplicate", rejected.Reason);
        Assert.Contains("px-1", rejected.Detail, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.4f, 0.5f)]
    [InlineData(0.5f, 0.4f)]
    public async Task Of_two_frames_of_one_time_the_same_one_is_kept_whichever_came_first(float first, float second)
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync([new FrameInput(Platform, Frame(Noon, 7, first)), new FrameInput(Platform, Frame(Noon, 7, second))]);
        await using var other = await TempStore.OpenAsync();
        await other.Store.Inputs.AppendAsync([new FrameInput(Platform, Frame(Noon, 7, second)), new FrameInput(Platform, Frame(Noon, 7, first))]);

        async Task<float> Kept(TempStore store) =>
            Assert.Single(await store.Store.Reader.FramesAsync(Platform, 2, Noon, Noon.AddSeconds(1))).SamplesKg[0][0];
        Assert.Equal(await Kept(temp), await Kept(other));
        Assert.Equal(1, (await temp.Store.Reader.IngestAsync()).Rejected);
    }

    [Fact]
    public async Task Frames_and_tags_of_a_pruned_time_are_refused_as_too_late_also_after_a_restart()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync([new FrameInput(Platform, Frame(Noon, 7, 0.4f))]);
        await temp.ChangeAsync(state => state.PruneFramesAsync(Noon.AddHours(1)));
        await temp.ReopenAsync();
        var result = await temp.Store.Inputs.AppendAsync(
            [new FrameInput(Platform, Frame(Noon, 7, 0.4f)), new TagInput(Platform, new TagRead(Noon, Eid.Parse("999000000000417")))]);

        Assert.Equal(2, result.Rejected);
        Assert.Empty(await temp.Store.Reader.FramesAsync(Platform, 2, Noon.AddDays(-1), Noon.AddDays(1)));
        Assert.All(await temp.Store.Reader.RejectedAsync(null, null, Page.All), rejected => Assert.Equal("too-late", rejected.Reason));
    }

    [Fact]
    public async Task A_batch_is_told_in_spans_of_event_time()
    {
        await using var temp = await TempStore.OpenAsync();
        await temp.Store.Inputs.AppendAsync(
        [
            new FrameInput(Platform, Frame(Noon.AddSeconds(1), 8, 1)), new FrameInput(Platform, Frame(Noon, 7, 1)),
            new FrameInput(Platform, Frame(Noon.AddHours(1), 9, 1)), new FrameInput("other", Frame(Noon, 0, 1)),
            new TagInput(Platform, new TagRead(Noon, Eid.Parse("999000000000417"))),
        ]);
        var batch = await temp.ChangeAsync(state => state.InputsAfterAsync(0, 100));

        Assert.Equal(5, batch.LastSeq);
        Assert.Equal(
            [("other", Noon), (Platform, Noon), (Platform, Noon.AddHours(1))],
            batch.Frames.Select(span => (span.Platform, span.From)));
        Assert.Equal(Noon.AddMilliseconds(1015), batch.Frames[1].To);
        Assert.Equal(Noon, Assert.Single(batch.Tags).From);
    }

    [Fact]
    public async Task Who_waits_is_told_when_the_log_grows_and_when_it_is_folded()
    {
        await using var temp = await TempStore.OpenAsync();
        var grown = temp.Store.Progress.UntilAppendedAsync(0);
        var result = await temp.Store.Inputs.AppendAsync([new WriteInput(Registration("417"))]);
        await grown.WaitAsync(TimeSpan.FromSeconds(10));
        var folded = temp.Store.Progress.UntilFoldedAsync(result.LastSeq);
        Assert.False(folded.IsCompleted);
        await temp.ChangeAsync(_ => Task.CompletedTask, result.LastSeq);
        await folded.WaitAsync(TimeSpan.FromSeconds(10));
    }

    private static Frame Frame(DateTimeOffset t0, long seq, float first) => new(seq, t0, 200, [[first, -1.5f, 300.25f], [0f, float.MaxValue, 12f]]);

    private static DevicePassage DevicePassage(string id, double lf) =>
        new(id, Eid.Parse("999000000000417"), Noon, Noon.AddSeconds(4), new PerLeg<double>(lf, 165.9, 139, 141));

    private static RegisterWrite Registration(string cow) =>
        new(Noon, new CowRegistration(cow, Noon) { Eid = Eid.Parse("999000000000417"), Pen = "2", EnteredAt = Noon });
}
