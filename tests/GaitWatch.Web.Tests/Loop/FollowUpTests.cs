using System.Net;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

public sealed class FollowUpTests : IAsyncLifetime
{
    // Clocks went forward at 02:00 on 29 March 2026 in the farm's zone.
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Theory]
    [InlineData("2026-03-26T22:59:00Z", "2026-03-29", "2026-03-31")]
    [InlineData("2026-03-26T23:01:00Z", "2026-03-30", "2026-04-01")]
    [InlineData("2026-03-29T21:59:00Z", "2026-04-01", "2026-04-03")]
    [InlineData("2026-03-29T22:01:00Z", "2026-04-02", "2026-04-04")]
    public async Task Days_are_the_farms_across_a_change_of_its_clocks(string at, string due, string overdue)
    {
        await FindAsync("f1", at, "wrap");
        Assert.Empty(await _farm.ListAsync($"/api/follow-ups?date={DateOnly.ParseExact(due, "yyyy-MM-dd").AddDays(-1):yyyy-MM-dd}"));
        var task = Assert.Single(await _farm.ListAsync($"/api/follow-ups?date={due}"))!;
        Assert.Equal("wrap-off", (string?)task["what"]);
        Assert.Equal(due, (string?)task["dueOn"]);
        Assert.Equal(overdue, (string?)task["overdueOn"]);
        Assert.Equal("f1", (string?)task["findingId"]);
    }

    [Fact]
    public async Task What_is_done_is_told_and_asks_no_more()
    {
        await FindAsync("f1", "2026-06-06T10:00:00Z", "wrap");
        var id = (string)Assert.Single(await _farm.ListAsync("/api/follow-ups?date=2026-06-10"))!["id"]!;
        for (var sent = 0; sent < 2; sent++)
        {
            // One tap needs no body, and tapped twice it is done once.
            using var done = await _farm.Http.PostAsync($"/api/follow-ups/{id}/done", null);
            Assert.True(done.IsSuccessStatusCode, await done.Content.ReadAsStringAsync());
            Assert.Equal("2026-06-10T05:30:00.000Z", (string?)JsonNode.Parse(await done.Content.ReadAsStringAsync())!["doneAt"]);
            _farm.Clock.Now = Some.Now.AddMinutes(5);
        }

        Assert.Empty(await _farm.ListAsync("/api/follow-ups?date=2026-06-10"));
        using var other = await _farm.PostAsync($"/api/follow-ups/{id}/done", new { at = "2026-06-09T05:30:00Z" });
        await Problems.AssertAsync(other, HttpStatusCode.Conflict, "at", "at is 2026-06-09T05:30:00Z, but this was done at 2026-06-10T05:30:00Z already; nothing is left to do.");
    }

    [Fact]
    public async Task What_cannot_have_been_done_is_refused()
    {
        await FindAsync("f1", "2026-06-06T10:00:00Z", "wrap");
        var id = (string)Assert.Single(await _farm.ListAsync("/api/follow-ups?date=2026-06-10"))!["id"]!;
        using (var before = await _farm.PostAsync($"/api/follow-ups/{id}/done", new { at = "2026-06-05T10:00:00Z" }))
        {
            await Problems.AssertAsync(
                before, HttpStatusCode.BadRequest, "at",
                "at is 2026-06-05T10:00:00Z, before the finding of 2026-06-06T10:00:00Z that asks for it: a time after that is needed.");
        }

        using (var unknown = await _farm.Http.PostAsync("/api/follow-ups/nothing/done", null))
            await Problems.AssertAsync(unknown, HttpStatusCode.NotFound, "id", "id is 'nothing': nothing of that id is to be done; GET /api/follow-ups lists what is.");
        using (var wrong = await _farm.PostAsync($"/api/follow-ups/{id}/done", new { by = 7 }))
            await Problems.AssertAsync(wrong, HttpStatusCode.BadRequest, "by", "by is 7: text in quotes is needed.");
        using var day = await _farm.Http.GetAsync("/api/follow-ups?date=tomorrow");
        await Problems.AssertAsync(day, HttpStatusCode.BadRequest, "date", "date is 'tomorrow': a date such as 2026-03-02 is needed.");
    }

    [Fact]
    public async Task A_block_that_the_farm_took_off_is_worn_no_longer()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await FindAsync("f1", "2026-05-12T10:00:00Z", "block");
        using (var planned = await _farm.PutAsync("/api/visits/2026-06-20", new { trimmer = "Anna" }))
            Assert.Equal(HttpStatusCode.Created, planned.StatusCode);
        var tasks = await _farm.ListAsync("/api/follow-ups?date=2026-06-10");
        var off = tasks.Single(task => (string?)task!["what"] == "block-off")!;
        Assert.Equal("2026-05-12", (string?)Assert.Single(await _farm.ListAsync("/api/trim-list"))!["blockOn"]);
        using (var done = await _farm.PostAsync($"/api/follow-ups/{off["id"]}/done", new { at = "2026-06-10T05:00:00Z", by = "Jan" }))
            Assert.Equal(HttpStatusCode.OK, done.StatusCode);
        Assert.Null(Assert.Single(await _farm.ListAsync("/api/trim-list"))!["blockOn"]);
        var marks = Assert.Single(await _farm.ListAsync("/api/cows/417/recovery"))!["marks"]!.AsArray();
        Assert.Equal(["block", "block-off"], marks.Select(mark => (string)mark!["what"]!));
    }

    [Fact]
    public async Task A_recording_holds_what_people_entered()
    {
        using var response = await _farm.Http.PostAsync("/api/inputs", new StringContent(
            """
            {"method":"PUT","route":"/api/visits/2026-03-20","body":{"trimmer":"Anna","at":"2026-03-10T08:00:00Z"} }
            {"method":"POST","route":"/api/cows/417/findings","body":{"id":"f1","at":"2026-03-20T10:00:00Z","foot":"rh","lesion":"SU","actions":["trimmed","wrap"]} }
            {"method":"POST","route":"/api/cows/417/findings","body":{"id":"f1","at":"2026-03-20T10:00:00Z","foot":"rh","lesion":"SU","actions":["trimmed"]} }
            {"method":"PUT","route":"/api/findings/f1","body":{"at":"2026-03-20T10:00:00Z","foot":"lh","lesion":"SU","actions":["trimmed","wrap"],"enteredAt":"2026-03-20T11:00:00Z"} }
            {"method":"PUT","route":"/api/visits/2026-04-20","body":{"at":"2026-03-20T12:00:00Z"} }
            {"method":"DELETE","route":"/api/visits/2026-04-20?at=2026-03-21T12:00:00Z"}
            {"method":"PUT","route":"/api/visits/2026-03-20/cows/417","body":{"hand":"pinned","reason":"walks short","at":"2026-03-11T08:00:00Z"} }
            """,
            null, "application/x-ndjson"));
        var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal(6, (int?)answer["stored"]);
        var fault = Assert.Single(answer["faults"]!.AsArray())!;
        Assert.Equal(3, (int?)fault["line"]);
        Assert.StartsWith("id is 'f1', under which another finding is kept", (string?)fault["fault"], StringComparison.Ordinal);
        Assert.Equal(["2026-03-20"], (await _farm.ListAsync("/api/visits")).Select(visit => (string)visit!["date"]!));
        Assert.Equal("lh", (string?)Assert.Single(await _farm.ListAsync("/api/findings"))!["foot"]);
        var task = Assert.Single(await _farm.ListAsync("/api/follow-ups?date=2026-03-23"))!;
        using var done = await _farm.Http.PostAsync("/api/inputs", new StringContent(
            $$"""{"method":"POST","route":"/api/follow-ups/{{task["id"]}}/done","body":{"at":"2026-03-23T07:00:00Z"} }""", null, "application/x-ndjson"));
        Assert.Equal(1, (int?)JsonNode.Parse(await done.Content.ReadAsStringAsync())!["stored"]);
        Assert.Empty(await _farm.ListAsync("/api/follow-ups?date=2026-03-23"));
    }

    private async Task FindAsync(string id, string at, params string[] actions)
    {
        using var response = await _farm.PostAsync("/api/cows/417/findings", new { id, at, foot = "rh", lesion = "SU", claw = "outer", actions });
        Assert.True(response.StatusCode == HttpStatusCode.Created, await response.Content.ReadAsStringAsync());
    }
}
