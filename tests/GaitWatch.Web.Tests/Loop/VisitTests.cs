using System.Net;
using System.Text.Json.Nodes;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

public sealed class VisitTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("418", 418));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_visit_is_planned_changed_moved_and_cancelled()
    {
        using var planned = await _farm.PutAsync("/api/visits/2026-06-12", new { half = "am", trimmer = "Anna", places = 20 });
        Assert.Equal(HttpStatusCode.Created, planned.StatusCode);
        Assert.Equal("/api/visits/2026-06-12", planned.Headers.Location?.ToString());
        Assert.Equal("""{"date":"2026-06-12","half":"am","trimmer":"Anna","places":20}""", await planned.Content.ReadAsStringAsync());

        _farm.Clock.Now = Some.Now.AddMinutes(1);
        using var changed = await _farm.PutAsync("/api/visits/2026-06-12", new { date = "2026-06-12", trimmer = "Anna", places = 12 });
        Assert.Equal(HttpStatusCode.OK, changed.StatusCode);
        Assert.Equal("""[{"date":"2026-06-12","half":null,"trimmer":"Anna","places":12}]""", (await _farm.ListAsync("/api/visits")).ToJsonString());

        _farm.Clock.Now = Some.Now.AddMinutes(2);
        for (var sent = 0; sent < 2; sent++)
        {
            // Sent again by a program that did not hear the answer, a move is done already.
            using var moved = await _farm.PutAsync("/api/visits/2026-06-12", new { date = "2026-06-15", trimmer = "Anna", places = 12 });
            Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
            Assert.Equal(["2026-06-15"], await DatesAsync());
        }

        _farm.Clock.Now = Some.Now.AddMinutes(3);
        using var cancelled = await _farm.Http.DeleteAsync("/api/visits/2026-06-15");
        Assert.Equal(HttpStatusCode.OK, cancelled.StatusCode);
        Assert.Equal("2026-06-15", (string?)JsonNode.Parse(await cancelled.Content.ReadAsStringAsync())!["date"]);
        Assert.Empty(await DatesAsync());
    }

    [Theory]
    [InlineData("2026-06-31", "{}", "date", "date is '2026-06-31' in the route: a date such as 2026-03-02 is needed.")]
    [InlineData("2026-06-12", """{"half":"noon"}""", "half", "half is 'noon': am, pm, or null for the whole day.")]
    [InlineData("2026-06-12", """{"places":0}""", "places", "places is 0: how many cows there is time for, 1 to 500, or null when not known.")]
    [InlineData("2026-06-12", """{"places":"ten"}""", "places", "places is 'ten': a whole number is needed.")]
    [InlineData("2026-06-12", """{"at":"2026-06-12T06:00:00Z"}""", "at", "at is 2026-06-12T06:00:00Z, more than a day ahead of now: the time at which it happened is needed.")]
    public async Task A_visit_that_cannot_be_taken_is_named_with_what_would_be_right(string date, string body, string field, string sentence)
    {
        using var response = await _farm.Http.PutAsync($"/api/visits/{date}", new StringContent(body, null, "application/json"));
        await Problems.AssertAsync(response, HttpStatusCode.BadRequest, field, sentence);
        Assert.Empty(await DatesAsync());
    }

    [Fact]
    public async Task What_is_not_planned_is_neither_moved_nor_cancelled_and_no_day_has_two()
    {
        using (var nothing = await _farm.PutAsync("/api/visits/2026-06-12", new { date = "2026-06-15" }))
            await Problems.AssertAsync(nothing, HttpStatusCode.NotFound, "date", "date is 2026-06-15, but no visit is planned on 2026-06-12 that could be moved: none is planned at all.");
        using (var nothing = await _farm.Http.DeleteAsync("/api/visits/2026-06-12"))
            await Problems.AssertAsync(nothing, HttpStatusCode.NotFound, "date", "date is 2026-06-12, where no visit is planned: none is planned at all.");
        await PlanAsync("2026-06-12");
        await PlanAsync("2026-06-15");
        using var taken = await _farm.PutAsync("/api/visits/2026-06-12", new { date = "2026-06-15", places = 3 });
        await Problems.AssertAsync(taken, HttpStatusCode.Conflict, "date", "date is 2026-06-15, where a visit is planned already: change that one, or cancel it first.");
        using var elsewhere = await _farm.Http.DeleteAsync("/api/visits/2026-06-13?at=yesterday");
        await Problems.AssertAsync(elsewhere, HttpStatusCode.BadRequest, "at", "at is 'yesterday': a time such as 2026-03-02T05:14:07.250Z is needed.");
    }

    [Fact]
    public async Task A_cow_is_put_on_the_list_and_taken_off_it_by_hand()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(Some.Alert("417", urgency: Urgency.Today));
        await PlanAsync("2026-06-12");
        Assert.Equal(["417 alert"], await RowsAsync());

        _farm.Clock.Now = Some.Now.AddMinutes(1);
        using var pinned = await _farm.PutAsync("/api/visits/2026-06-12/cows/418", new { hand = "pinned", reason = "walks short", foot = "lf", by = "Jan" });
        Assert.Equal(HttpStatusCode.OK, pinned.StatusCode);
        Assert.Equal("pinned", (string?)JsonNode.Parse(await pinned.Content.ReadAsStringAsync())!["hand"]);
        using var removed = await _farm.PutAsync("/api/visits/2026-06-12/cows/417", new { hand = "removed", reason = "the veterinarian was here" });
        Assert.Equal(HttpStatusCode.OK, removed.StatusCode);
        Assert.Equal(["418 recheck"], await RowsAsync());
        var row = Assert.Single(await _farm.ListAsync("/api/trim-list"))!;
        Assert.True((bool?)row["isPinned"]);
        Assert.Contains("Asked for by hand: walks short.", (string?)row["note"], StringComparison.Ordinal);

        _farm.Clock.Now = Some.Now.AddMinutes(2);
        foreach (var cow in (string[])["417", "418"])
        {
            using var back = await _farm.Http.DeleteAsync($"/api/visits/2026-06-12/cows/{cow}");
            Assert.Equal(HttpStatusCode.OK, back.StatusCode);
        }

        Assert.Equal(["417 alert"], await RowsAsync());
    }

    [Theory]
    [InlineData("417", """{"hand":"maybe","reason":"x"}""", HttpStatusCode.BadRequest, "hand", "hand is 'maybe': pinned to put her on the list, removed to take her off; DELETE takes either back.")]
    [InlineData("417", """{"reason":"x"}""", HttpStatusCode.BadRequest, "hand", "hand is missing: pinned to put her on the list, removed to take her off; DELETE takes either back.")]
    [InlineData("417", """{"hand":"pinned"}""", HttpStatusCode.BadRequest, "reason", "reason is empty: say why, in a few words; it stands beside her on the list.")]
    [InlineData("417", """{"hand":"pinned","reason":"x","foot":"left"}""", HttpStatusCode.BadRequest, "foot", "foot is 'left': one of lf rf lh rh, or null.")]
    [InlineData("999", """{"hand":"pinned","reason":"x"}""", HttpStatusCode.NotFound, "cow", "cow is '999': no cow of that name is registered or has crossed a platform; GET /api/cows lists those that are.")]
    public async Task A_decision_by_hand_that_cannot_be_taken_is_named(string cow, string body, HttpStatusCode status, string field, string sentence)
    {
        await PlanAsync("2026-06-12");
        using var response = await _farm.Http.PutAsync($"/api/visits/2026-06-12/cows/{cow}", new StringContent(body, null, "application/json"));
        await Problems.AssertAsync(response, status, field, sentence);
    }

    [Fact]
    public async Task A_cow_is_ticked_off_and_put_elsewhere_for_everybody_to_see()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)), Some.Passage("b", 418, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(Some.Alert("417", urgency: Urgency.Today, drop: 20), Some.Alert("418", urgency: Urgency.Today, drop: 10));
        await PlanAsync("2026-06-12");
        Assert.Equal(["417 alert", "418 alert"], await RowsAsync());

        using var ticked = await _farm.Http.PutAsync("/api/visits/2026-06-12/cows/417/done", null);
        Assert.Equal("""{"visit":"2026-06-12","cow":"417","doneAt":"2026-06-10T05:30:00.000Z","by":""}""", await ticked.Content.ReadAsStringAsync());
        using var moved = await _farm.PutAsync("/api/visits/2026-06-12/cows/418/place", new { before = "417", by = "Jan" });
        Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
        var rows = await _farm.ListAsync("/api/trim-list");
        Assert.Equal([("418", null), ("417", "2026-06-10T05:30:00.000Z")], rows.Select(row => ((string)row!["cow"]!, (string?)row["doneAt"])));

        _farm.Clock.Now = Some.Now.AddMinutes(1);
        using var taken = await _farm.Http.DeleteAsync("/api/visits/2026-06-12/cows/417/done");
        Assert.Equal(HttpStatusCode.OK, taken.StatusCode);
        Assert.All(await _farm.ListAsync("/api/trim-list"), row => Assert.Null(row!["doneAt"]));
    }

    [Theory]
    [InlineData("2026-06-12", "417/place", """{"before":"417"}""", HttpStatusCode.BadRequest, "before", "before is '417', the cow herself: the number of the cow she is to come before, or null for the end.")]
    [InlineData("2026-06-12", "417/place", """{"before":"999"}""", HttpStatusCode.BadRequest, "before", "before is '999': no cow of that name is registered or has crossed a platform.")]
    [InlineData("2026-06-12", "999/done", "{}", HttpStatusCode.NotFound, "cow", "cow is '999': no cow of that name is registered or has crossed a platform; GET /api/cows lists those that are.")]
    [InlineData("2026-06-13", "417/done", "{}", HttpStatusCode.NotFound, "date", "date is '2026-06-13', where no visit is planned; GET /api/visits lists those that are.")]
    public async Task A_tick_or_a_place_that_cannot_be_taken_is_named(string date, string rest, string body, HttpStatusCode status, string field, string sentence)
    {
        await PlanAsync("2026-06-12");
        using var response = await _farm.Http.PutAsync($"/api/visits/{date}/cows/{rest}", new StringContent(body, null, "application/json"));
        await Problems.AssertAsync(response, status, field, sentence);
    }

    [Fact]
    public async Task Without_a_visit_there_is_no_list_to_decide_on()
    {
        using var put = await _farm.PutAsync("/api/visits/2026-06-12/cows/417", new { hand = "pinned", reason = "walks short" });
        await Problems.AssertAsync(put, HttpStatusCode.NotFound, "date", "visit is 2026-06-12, where no visit is planned: plan it first.");
        using var delete = await _farm.Http.DeleteAsync("/api/visits/2026-06-12/cows/417");
        await Problems.AssertAsync(delete, HttpStatusCode.NotFound, "date", "visit is 2026-06-12, where no visit is planned: plan it first.");
    }

    private async Task PlanAsync(string date)
    {
        using var planned = await _farm.PutAsync($"/api/visits/{date}", new { trimmer = "Anna" });
        Assert.Equal(HttpStatusCode.Created, planned.StatusCode);
    }

    private async Task<string[]> DatesAsync() => [.. (await _farm.ListAsync("/api/visits")).Select(visit => (string)visit!["date"]!)];

    private async Task<string[]> RowsAsync() => [.. (await _farm.ListAsync("/api/trim-list")).Select(row => $"{row!["cow"]} {row["reason"]}")];
}
