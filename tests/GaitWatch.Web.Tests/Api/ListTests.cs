using System.Net;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

public sealed class ListTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_passage_has_the_members_of_the_contract_and_null_for_what_was_not_measured()
    {
        await _farm.PassAsync(Some.Passage("px-1", 417, Some.Now.AddHours(-1), 168.2, 165.9, 139.0, 141.3));
        var passage = Assert.Single(await _farm.ListAsync("/api/cows/417/passages"))!.AsObject();
        Assert.Equal(
            ["cow", "eid", "endedAt", "id", "legs", "platform", "quality", "reasons", "speedMetresPerSecond", "startedAt", "strideSeconds", "weightKg"],
            passage.Select(member => member.Key).Order(StringComparer.Ordinal));
        Assert.Equal("982000000000417", (string?)passage["eid"]);
        Assert.Equal("accepted", (string?)passage["quality"]);
        Assert.Equal("2026-06-10T04:30:00.000Z", (string?)passage["startedAt"]);
        Assert.Equal(614.4, (double?)passage["weightKg"]);
        Assert.Null(passage["strideSeconds"]);
        var lf = passage["legs"]!["lf"]!.AsObject();
        Assert.Equal(["footfalls", "loadKg", "peakKg", "share", "shareError", "stanceSeconds"], lf.Select(member => member.Key).Order(StringComparer.Ordinal));
        Assert.Equal(168.2, (double?)lf["loadKg"]);
        // 168.2 / 614.4 = 0.27376302..., told with six decimals.
        Assert.Equal("0.273763", lf["share"]!.ToJsonString());
        Assert.Null(lf["shareError"]);
    }

    [Fact]
    public async Task Passages_are_told_apart_by_time_platform_and_quality_and_nobodys_are_among_them()
    {
        await _farm.PassAsync(
            Some.Passage("a", 417, Some.Now.AddHours(-3)), Some.Passage("b", null, Some.Now.AddHours(-2)), Some.Passage("c", 417, Some.Now.AddHours(-1), lf: 0));
        Assert.Equal(["a", "b", "c"], await IdsAsync("/api/passages"));
        Assert.Equal(["a", "c"], await IdsAsync("/api/cows/417/passages"));
        Assert.Equal(["b", "c"], await IdsAsync("/api/passages?quality=rejected"));
        Assert.Equal(["a"], await IdsAsync("/api/passages?quality=accepted&platform=parlour-exit"));
        Assert.Empty(await IdsAsync("/api/passages?platform=elsewhere"));
        Assert.Equal(["b"], await IdsAsync("/api/passages?from=2026-06-10T03:00:00Z&to=2026-06-10T04:30:00Z"));
        Assert.Equal(["c"], await IdsAsync("/api/passages?page=3&pageSize=1"));
        var nobodys = (await _farm.ListAsync("/api/passages?quality=rejected"))[0]!;
        Assert.Null(nobodys["cow"]);
        Assert.Equal(["no-tag"], nobodys["reasons"]!.AsArray().Select(reason => (string)reason!));
    }

    [Fact]
    public async Task A_long_list_without_pages_comes_whole()
    {
        // More than the stretch in which the list is read.
        await _farm.PassAsync([.. Enumerable.Range(0, 4500).Select(i => Some.Passage($"p{i:D5}", 417, Some.Now.AddHours(-3).AddSeconds(i)))]);
        var ids = await IdsAsync("/api/passages");
        Assert.Equal(4500, ids.Length);
        Assert.Equal(4500, ids.Distinct().Count());
        Assert.Equal("p04499", ids[^1]);
    }

    [Fact]
    public async Task Lists_that_hold_nothing_are_empty_and_those_of_an_unknown_cow_do_not_exist()
    {
        Assert.Empty(await _farm.ListAsync("/api/visits"));
        Assert.Empty(await _farm.ListAsync("/api/findings"));
        Assert.Empty(await _farm.ListAsync("/api/findings?cow=417&from=2026-01-01"));
        Assert.Empty(await _farm.ListAsync("/api/follow-ups"));
        Assert.Empty(await _farm.ListAsync("/api/cows/417/recovery"));
        foreach (var route in (string[])["/api/cows/nobody", "/api/cows/nobody/recovery", "/api/cows/nobody/passages", "/api/findings?cow=nobody"])
        {
            using var response = await _farm.Http.GetAsync(route);
            await Problems.AssertAsync(
                response, HttpStatusCode.NotFound, "cow",
                "cow is 'nobody': no cow of that name is registered or has crossed a platform; GET /api/cows lists those that are.");
        }
    }

    [Fact]
    public async Task The_trim_list_comes_as_json_and_as_csv()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(Some.Alert("417", urgency: Urgency.Today, drop: 14.2));
        var row = Assert.Single(await _farm.ListAsync("/api/trim-list"))!;
        Assert.Equal(1, (int?)row["position"]);
        Assert.Equal("alert", (string?)row["reason"]);
        Assert.Equal("Lift both hind feet.", (string?)row["note"]);

        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/trim-list") { Headers = { { "Accept", "text/csv" } } };
        using var response = await _farm.Http.SendAsync(request);
        Assert.Equal("text/csv; charset=utf-8", response.Content.Headers.ContentType?.ToString());
        var lines = (await response.Content.ReadAsStringAsync()).Split("\r\n");
        Assert.Equal("position,cow,eid,pen,reason,leg,loadDropPercent,since,urgency,daysInMilk,dueOn,lastSeenAt,lastFinding,blockOn,withdrawalUntil,note,hasPlace", lines[0]);
        Assert.StartsWith("1,417,982000000000417,2,alert,rh,14.2,2026-06-05,today,", lines[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("text/plain", "text/plain")]
    [InlineData("text/csv;q=0.5, text/plain", "text/plain")]
    [InlineData("text/plain;q=0.5, text/csv", "text/csv")]
    [InlineData("text/plain, application/json", "application/json")]
    [InlineData("*/*", "application/json")]
    [InlineData("text/*", "application/json")]
    public async Task The_trim_list_comes_as_what_is_asked_for_most(string accept, string given)
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(Some.Alert("417", urgency: Urgency.Today, drop: 14.2));
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/trim-list") { Headers = { { "Accept", accept } } };
        using var response = await _farm.Http.SendAsync(request);
        Assert.Equal(given, response.Content.Headers.ContentType?.MediaType);
        if (given != "text/plain")
            return;
        var text = await response.Content.ReadAsStringAsync();
        Assert.StartsWith("Trim list for 2026-06-10, no visit planned, 1 cow\n", text, StringComparison.Ordinal);
        Assert.Contains("  1  417      pen 2      right hind  alert today       carries 14 % less\n", text, StringComparison.Ordinal);
        Assert.Contains("Call the veterinarian the same day", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Platforms_and_what_came_in_are_told()
    {
        await _farm.TakeAsync(new RejectedInput("gaitwatch/home/parlour-exit/tag", "bad-json", "payload is no JSON.", "{oops"u8.ToArray()));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        var platform = Assert.Single(await _farm.ListAsync("/api/platforms"))!;
        Assert.Equal("parlour-exit", (string?)platform["id"]);
        Assert.Equal("ok", (string?)platform["state"]);
        Assert.Equal(1.0, (double?)platform["tagReadRate"]);
        Assert.Empty(platform["troubles"]!.AsArray());
        var ingest = (await _farm.GetAsync("/api/ingest")).AsObject();
        Assert.Equal(["duplicates", "pending", "received", "rejected", "stored"], ingest.Select(member => member.Key).Order(StringComparer.Ordinal));
        Assert.Equal(1, (int?)ingest["rejected"]);
        var rejected = Assert.Single(await _farm.ListAsync("/api/ingest/rejected"))!;
        Assert.Equal("bad-json", (string?)rejected["reason"]);
        Assert.Equal("{oops", (string?)rejected["payload"]);
        Assert.Empty(await _farm.ListAsync("/api/ingest/rejected?to=2026-06-10"));
    }

    [Fact]
    public async Task Curves_that_are_not_there_say_why()
    {
        var id = "parlour-exit.a";
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        using var summed = await _farm.Http.GetAsync($"/api/passages/{id}/curves");
        await Problems.AssertAsync(
            summed, HttpStatusCode.NotFound, "id",
            "id is 'parlour-exit.a': the device summed this passage up itself and sent no samples, so that there is no curve; only crossings analysed from frames have one.");

        var startedAt = Some.Now.AddDays(-60);
        var pruned = Some.Passage("x", 417, startedAt).ToPassage(Some.Platform, new()) with { Id = Gait.PassageId.Of(Some.Platform, startedAt) };
        await _farm.ChangeAsync(async state => await state.ReplacePassagesAsync([], [pruned], fromFrames: true, await state.RegisterAsync()));
        using var old = await _farm.Http.GetAsync($"/api/passages/{pruned.Id}/curves");
        await Problems.AssertAsync(
            old, HttpStatusCode.NotFound, "id",
            $"id is '{pruned.Id}': its frames have been removed: they are kept for GaitWatch:FrameRetentionDays only.");

        using var never = await _farm.Http.GetAsync("/api/passages/nothing/curves");
        await Problems.AssertAsync(never, HttpStatusCode.NotFound, "id", "id is 'nothing': no passage has it; GET /api/passages lists those that are.");
    }

    private async Task<string[]> IdsAsync(string route) =>
        [.. (await _farm.ListAsync(route)).Select(passage => ((string)passage!["id"]!)["parlour-exit.".Length..])];
}
