using System.Net;
using GaitWatch.Gait;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>Force curves of a crossing whose truth the simulator knows.</summary>
public sealed class CurveTests : IAsyncLifetime
{
    private const int SamplesPerFrame = 50;
    private readonly FarmHost _farm = new();
    private readonly SimulatedCrossing _crossing = WalkGenerator.Steady(20260610);
    private readonly DateTimeOffset _start = Some.Now.AddHours(-1);

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Each_foot_has_its_curve_where_and_when_it_stood()
    {
        var passage = await CrossAsync();
        var curves = await _farm.GetAsync($"/api/passages/{passage.Id}/curves");
        Assert.Equal(passage.Id, (string?)curves["id"]);
        var footfalls = curves["footfalls"]!.AsArray().Where(f => (bool)f!["whole"]!).ToArray();
        var truth = _crossing.Truth.Footfalls.Where(f => f.IsWhole).OrderBy(f => f.ContactSeconds).ToArray();
        Assert.Equal(truth.Select(f => f.Foot.ToString().ToLowerInvariant()), footfalls.Select(f => (string)f!["leg"]!));
        foreach (var (shown, was) in footfalls.Zip(truth))
        {
            // What a careful reference reaches on such crossings is 10 ms of stance and 0.4 % of peak; here only that it is the same foot.
            Assert.InRange(((DateTimeOffset)shown!["contact"]! - _start).TotalSeconds - was.ContactSeconds, -0.05, 0.05);
            Assert.InRange((double)shown["x"]! - was.X, -0.1, 0.1);
            var curve = shown["curveKg"]!.AsArray().Select(kg => (double)kg!).ToArray();
            Assert.InRange(curve.Max() / was.PeakKg, 0.95, 1.05);
            Assert.InRange(curve.Length / (double)shown["hz"]! / was.StanceSeconds, 0.9, 1.1);
        }
    }

    [Fact]
    public async Task Once_the_frames_are_gone_that_is_said()
    {
        var passage = await CrossAsync();
        await _farm.ChangeAsync(state => state.PruneFramesAsync(Some.Now));
        using var response = await _farm.Http.GetAsync($"/api/passages/{passage.Id}/curves");
        await Problems.AssertAsync(
            response, HttpStatusCode.NotFound, "id", $"id is '{passage.Id}': its frames have been removed: they are kept for GaitWatch:FrameRetentionDays only.");
    }

    private async Task<Passage> CrossAsync()
    {
        var frames = _crossing.Frames(SamplesPerFrame)
            .Select((part, i) => new Frame(
                i, _start.AddSeconds(part.Start / _crossing.Hz), _crossing.Hz, [.. _crossing.Samples.Select(cell => cell[part.Start..(part.Start + part.Count)])]))
            .ToArray();
        await _farm.TakeAsync([.. frames.Select(frame => new FrameInput(Some.Platform, frame))]);
        var crossing = Assert.Single(new CrossingAnalyser(TwinPlate.Default, new GaitOptions()).Analyse(frames).Crossings);
        var passage = crossing.ToPassage(Some.Platform, new TagVerdict(Some.Tag(417), null));
        await _farm.ChangeAsync(async state => await state.ReplacePassagesAsync([], [passage], fromFrames: true, await state.RegisterAsync()));
        return passage;
    }
}
