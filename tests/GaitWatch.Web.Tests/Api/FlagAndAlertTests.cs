using System.Net;
using System.Text.Json.Nodes;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

public sealed class FlagAndAlertTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("87", 87), Some.Cow("9", 9, pen: null));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)), Some.Passage("b", 87, Some.Now.AddMinutes(-50)));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_flag_has_the_members_of_the_contract()
    {
        await _farm.RaiseAsync(Some.Alert("417"));
        var flag = Assert.Single(await _farm.ListAsync("/api/flags"))!.AsObject();
        Assert.Equal(
            ["afterTreatment", "closeReason", "closedAt", "cow", "explanation", "id", "label", "lastSeenAt", "leg", "legProbability", "liftedAt", "loadDropInterval", "loadDropPercent", "onsetAt", "pattern", "pen", "raisedAt", "revisedAt", "state", "urgency"],
            flag.Select(member => member.Key).Order(StringComparer.Ordinal));
        Assert.Equal("417", (string?)flag["cow"]);
        Assert.Equal("2", (string?)flag["pen"]);
        Assert.Equal("one-leg", (string?)flag["pattern"]);
        Assert.Equal("rh", (string?)flag["leg"]);
        Assert.Equal("open", (string?)flag["state"]);
        Assert.Equal("today", (string?)flag["urgency"]);
        Assert.Equal("2026-06-09T16:30:00.000Z", (string?)flag["raisedAt"]);
        Assert.Equal(["lf", "rf", "lh", "rh"], flag["legProbability"]!.AsObject().Select(member => member.Key));
        Assert.Null(flag["revisedAt"]);
    }

    [Fact]
    public async Task Flags_come_worst_first_and_only_from_days_on_which_they_were_open()
    {
        await _farm.RaiseAsync(Some.Alert("9", urgency: Urgency.Watch, drop: 30), Some.Alert("87", drop: 9), Some.Alert("417", drop: 14));
        Assert.Equal(["417", "87", "9"], (await _farm.ListAsync("/api/flags")).Select(flag => (string?)flag!["cow"]));
        Assert.Empty(await _farm.ListAsync("/api/flags?date=2026-06-08"));
        Assert.Equal(3, (await _farm.ListAsync("/api/flags?date=2026-06-09")).Count);
        Assert.Equal("87", (string?)Assert.Single(await _farm.ListAsync("/api/flags?page=2&pageSize=1"))!["cow"]);
    }

    [Theory]
    [InlineData("/api/flags?date=yesterday", "date", "date is 'yesterday': a date such as 2026-03-02 is needed.")]
    [InlineData("/api/flags?date=2026-02-30", "date", "date is '2026-02-30': a date such as 2026-03-02 is needed.")]
    [InlineData("/api/alerts?from=soon", "from", "from is 'soon': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed.")]
    [InlineData("/api/alerts?from=2026-03-02T05:14:07", "from", "from is '2026-03-02T05:14:07': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed.")]
    [InlineData("/api/alerts?from=2026-03-02&to=2026-03-01", "to", "to is '2026-03-01', before from '2026-03-02': from is where the span begins (inclusive), to where it ends (exclusive).")]
    [InlineData("/api/alerts?state=done", "state", "state is 'done': one of open, listed, examined, closed is needed.")]
    [InlineData("/api/alerts?page=0", "page", "page is '0': a whole number from 1 to 1000000 is needed.")]
    [InlineData("/api/alerts?pageSize=5000", "pageSize", "pageSize is '5000': a whole number from 1 to 1000 is needed.")]
    [InlineData("/api/passages?quality=good", "quality", "quality is 'good': one of accepted, rejected is needed.")]
    [InlineData("/api/trim-list?visit=now", "visit", "visit is 'now': a date such as 2026-03-02 is needed.")]
    [InlineData("/api/follow-ups?date=7", "date", "date is '7': a date such as 2026-03-02 is needed.")]
    [InlineData("/api/ingest/rejected?to=x", "to", "to is 'x': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed.")]
    public async Task A_parameter_that_cannot_be_read_is_named_with_what_would_be_right(string route, string field, string sentence)
    {
        using var response = await _farm.Http.GetAsync(route);
        await Problems.AssertAsync(response, HttpStatusCode.BadRequest, field, sentence);
    }

    [Fact]
    public async Task Every_fault_of_a_request_is_named_at_once()
    {
        using var response = await _farm.Http.GetAsync("/api/alerts?from=x&state=y&page=z");
        var problem = await Problems.ReadAsync(response, HttpStatusCode.BadRequest);
        Assert.Equal(["from", "page", "state"], problem["errors"]!.AsObject().Select(error => error.Key));
    }

    [Fact]
    public async Task Alerts_are_found_by_when_they_were_raised_in_the_farms_days_and_by_cow_and_state()
    {
        // Midnight of 10 June at the farm is 22:00 UTC of 9 June.
        var before = Some.Alert("417", raisedAt: new DateTimeOffset(2026, 6, 9, 21, 59, 59, TimeSpan.Zero));
        var after = Some.Alert("87", raisedAt: new DateTimeOffset(2026, 6, 9, 22, 0, 0, TimeSpan.Zero));
        await _farm.RaiseAsync(before, after);
        Assert.Equal([after.Id], await IdsAsync("/api/alerts?from=2026-06-10"));
        Assert.Equal([before.Id], await IdsAsync("/api/alerts?to=2026-06-10"));
        Assert.Equal([after.Id], await IdsAsync("/api/alerts?from=2026-06-09T22:00:00Z"));
        Assert.Equal([after.Id], await IdsAsync("/api/alerts?from=2026-06-10T00:00:00%2B02:00"));
        Assert.Equal([after.Id], await IdsAsync("/api/alerts?from=2026-06-10T00:00:00+02:00"));
        Assert.Equal([before.Id], await IdsAsync("/api/alerts?cow=417"));
        Assert.Equal([after.Id, before.Id], await IdsAsync("/api/alerts?state=open"));
        Assert.Empty(await IdsAsync("/api/alerts?state=closed"));
        Assert.Equal(after.Id, (string?)(await _farm.GetAsync($"/api/alerts/{after.Id}"))["id"]);
    }

    [Fact]
    public async Task Pages_say_where_their_neighbours_are()
    {
        await _farm.RaiseAsync([.. Enumerable.Range(0, 4).Select(i => Some.Alert("417", raisedAt: Some.Now.AddHours(-i)))]);
        Assert.Equal(
            "</api/alerts?cow=417&page=1&pageSize=2>; rel=\"first\", </api/alerts?cow=417&page=2&pageSize=2>; rel=\"next\"",
            await LinkAsync("/api/alerts?cow=417&page=1&pageSize=2"));
        Assert.Equal(
            "</api/alerts?cow=417&page=1&pageSize=2>; rel=\"first\", </api/alerts?cow=417&page=1&pageSize=2>; rel=\"prev\"",
            await LinkAsync("/api/alerts?page=2&cow=417&pageSize=2"));
        Assert.Null(await LinkAsync("/api/alerts"));
        Assert.Single(await _farm.ListAsync("/api/alerts?page=2&pageSize=3"));
    }

    [Fact]
    public async Task An_alert_that_late_data_gave_another_id_moves_and_one_taken_back_is_gone()
    {
        var old = Some.Alert("417", Leg.Rh, Some.Now.AddDays(-3));
        var withdrawn = Some.Alert("87", Leg.Lh, Some.Now.AddDays(-3));
        await _farm.RaiseAsync(old, withdrawn);
        var successor = Some.Alert("417", Leg.Rh, Some.Now.AddDays(-2));
        await _farm.ChangeAsync(async state =>
        {
            await state.ForgetFromAsync(Some.Now.AddDays(-10));
            await state.WriteAlertStepsAsync([new AlertChange(successor.RaisedAt, AlertChangeKind.Raised, successor)]);
            await state.SettleRevisionAsync(Some.Now);
        });

        using var moved = await _farm.Http.GetAsync($"/api/alerts/{old.Id}");
        Assert.Equal(HttpStatusCode.PermanentRedirect, moved.StatusCode);
        Assert.Equal($"/api/alerts/{successor.Id}", moved.Headers.Location?.ToString());
        using var closing = await _farm.PostAsync($"/api/alerts/{old.Id}/close", new { reason = "other" });
        Assert.Equal(HttpStatusCode.PermanentRedirect, closing.StatusCode);
        Assert.Equal($"/api/alerts/{successor.Id}/close", closing.Headers.Location?.ToString());

        using var gone = await _farm.Http.GetAsync($"/api/alerts/{withdrawn.Id}");
        await Problems.AssertAsync(gone, HttpStatusCode.Gone, "id", $"id is '{withdrawn.Id}': late data took this alert back; GET /api/alerts lists those that are.");
        using var closingGone = await _farm.PostAsync($"/api/alerts/{withdrawn.Id}/close", new { reason = "other" });
        Assert.Equal(HttpStatusCode.Gone, closingGone.StatusCode);

        using var never = await _farm.Http.GetAsync("/api/alerts/nobody");
        await Problems.AssertAsync(never, HttpStatusCode.NotFound, "id", "id is 'nobody': no alert ever had it; GET /api/alerts lists those that are.");
    }

    [Fact]
    public async Task Closing_takes_a_reason_and_answers_the_alert_as_it_stands()
    {
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        using var response = await _farm.PostAsync($"/api/alerts/{alert.Id}/close", new { reason = "lifted-nothing-found", note = "both hind feet lifted", by = "Anna", more = 1 });
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        var closed = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal("closed", (string?)closed["state"]);
        Assert.Equal("lifted-nothing-found", (string?)closed["closeReason"]);
        Assert.Equal("2026-06-10T05:30:00.000Z", (string?)closed["closedAt"]);
        Assert.Empty(await _farm.ListAsync("/api/flags"));

        using var again = await _farm.PostAsync($"/api/alerts/{alert.Id}/close", new { reason = "other" });
        await Problems.AssertAsync(
            again, HttpStatusCode.Conflict, "id",
            $"id is '{alert.Id}': this alert was closed at 2026-06-10T05:30:00Z already (lifted-nothing-found); only an open one can be closed.");
    }

    [Theory]
    [InlineData("""{}""", "reason", "reason is missing: one of lifted-nothing-found, seen-walking-sound, treated-by-farm, wrong-cow, left-herd, other is needed.")]
    [InlineData("""{"reason":"load-normal"}""", "reason", "reason is 'load-normal': one of lifted-nothing-found, seen-walking-sound, treated-by-farm, wrong-cow, left-herd, other is needed.")]
    [InlineData("""{"reason":7}""", "reason", "reason is 7: text in quotes is needed.")]
    [InlineData("""{"reason":"other","at":"today"}""", "at", "at is 'today': a time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("""{"reason":"other","at":"2026-06-01T00:00:00Z"}""", "at", "at is 2026-06-01T00:00:00Z, before the alert was raised at 2026-06-09T16:30:00Z: a time after that is needed.")]
    [InlineData("""{"reason":"other","at":"2027-06-01T00:00:00Z"}""", "at", "at is 2027-06-01T00:00:00Z, more than a day ahead of now: the time at which it happened is needed.")]
    [InlineData("""[1]""", "body", "body is an array: a JSON object is needed.")]
    [InlineData("""{"reason":""", "body", "body cannot be read as JSON at line 1, byte 10: a JSON object in UTF-8 is needed.")]
    public async Task A_closing_that_cannot_be_taken_is_named_with_what_would_be_right(string body, string field, string sentence)
    {
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        using var response = await _farm.Http.PostAsync($"/api/alerts/{alert.Id}/close", new StringContent(body, null, "application/json"));
        await Problems.AssertAsync(response, HttpStatusCode.BadRequest, field, sentence);
        Assert.Single(await _farm.ListAsync("/api/flags"));
    }

    private async Task<string[]> IdsAsync(string route) => [.. (await _farm.ListAsync(route)).Select(alert => (string)alert!["id"]!)];

    private async Task<string?> LinkAsync(string route)
    {
        using var response = await _farm.Http.GetAsync(route);
        return response.Headers.TryGetValues("Link", out var links) ? Assert.Single(links) : null;
    }
}
