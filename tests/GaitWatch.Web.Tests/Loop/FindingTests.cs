using System.Net;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

public sealed class FindingTests : IAsyncLifetime
{
    private const string Ulcer =
        """
        {"id":"f1","at":"2026-06-09T10:20:00.000Z","foot":"rh","claw":"outer","zone":4,"lesion":"SU","severity":2,"mStage":null,"signs":[],
         "actions":["trimmed","block"],"blockClaw":"inner","blockMaterial":"rubber","foreignBody":null,"withdrawalUntil":null,"locomotionScore":3,"by":"Anna","note":""}
        """;

    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("418", 418));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_finding_is_kept_as_the_contract_writes_it()
    {
        using var created = await PostAsync("417", Ulcer);
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        Assert.Equal("/api/findings/f1", created.Headers.Location?.ToString());
        var answer = await ReadAsync(created);
        var sent = JsonNode.Parse(Ulcer)!.AsObject();
        foreach (var (name, value) in sent)
            Assert.True(JsonNode.DeepEquals(value, answer[name]), $"{name}: {answer[name]?.ToJsonString()}");
        Assert.Equal("417", (string?)answer["cow"]);
        Assert.Empty(answer["warnings"]!.AsArray());
        Assert.Equal("""{"route":"/api/findings/f1","versions":1,"enteredAt":"2026-06-10T05:30:00.000Z","correctedAt":null}""", answer["correctable"]!.ToJsonString());
        Assert.True(JsonNode.DeepEquals(answer, Assert.Single(await _farm.ListAsync("/api/findings"))));
    }

    [Fact]
    public async Task Sent_twice_it_counts_once_and_another_body_under_its_id_is_refused()
    {
        using (var first = await PostAsync("417", Ulcer))
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        // The order of what was done does not matter, nor what is left out where it means nothing.
        using (var again = await PostAsync("417", Ulcer.Replace("""["trimmed","block"]""", """["block","trimmed"]""", StringComparison.Ordinal).Replace("\"foreignBody\":null,", "", StringComparison.Ordinal)))
        {
            Assert.Equal(HttpStatusCode.OK, again.StatusCode);
            Assert.Equal(1, (int?)(await ReadAsync(again))["correctable"]!["versions"]);
        }

        const string Refused = "id is 'f1', under which another finding is kept: give a new finding an id of its own, or correct the kept one with PUT /api/findings/f1.";
        using (var other = await PostAsync("417", Ulcer.Replace("\"severity\":2", "\"severity\":3", StringComparison.Ordinal)))
            await Problems.AssertAsync(other, HttpStatusCode.Conflict, "id", Refused);
        using (var otherCow = await PostAsync("418", Ulcer))
            await Problems.AssertAsync(otherCow, HttpStatusCode.Conflict, "id", Refused);
        Assert.Equal(2, (int?)Assert.Single(await _farm.ListAsync("/api/findings"))!["severity"]);
    }

    [Fact]
    public async Task Two_bodies_under_one_new_id_at_once_leave_one_finding()
    {
        var answers = await Task.WhenAll(Enumerable.Range(1, 3).Select(severity => PostAsync("417", Ulcer.Replace("\"severity\":2", $"\"severity\":{severity}", StringComparison.Ordinal))));
        var codes = answers.Select(answer => answer.StatusCode).ToArray();
        Assert.Single(codes, HttpStatusCode.Created);
        Assert.Equal(2, codes.Count(code => code == HttpStatusCode.Conflict));
        var kept = Assert.Single(await _farm.ListAsync("/api/findings"))!;
        Assert.Equal(1, (int?)kept["correctable"]!["versions"]);
        foreach (var answer in answers)
            answer.Dispose();
    }

    [Fact]
    public async Task A_finding_is_taken_back_once_however_often_it_is_sent_and_leaves_nothing_to_do()
    {
        using (var first = await PostAsync("417", Ulcer))
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        Assert.NotEmpty(await _farm.ListAsync("/api/follow-ups?date=2026-06-20"));
        for (var sent = 0; sent < 2; sent++)
        {
            using var back = await _farm.Http.DeleteAsync("/api/findings/f1?at=2026-06-09T10:21:00Z");
            Assert.Equal(HttpStatusCode.OK, back.StatusCode);
            Assert.Equal("2026-06-09T10:21:00.000Z", (string?)(await ReadAsync(back))["withdrawnAt"]);
        }

        Assert.Empty(await _farm.ListAsync("/api/findings"));
        Assert.Empty(await _farm.ListAsync("/api/follow-ups?date=2026-06-20"));
        // The first sending, repeated by a phone that never heard the answer, does not bring it back.
        using (var again = await PostAsync("417", Ulcer))
            Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Empty(await _farm.ListAsync("/api/findings"));
        // A correction does.
        using (var corrected = await _farm.Http.PutAsync("/api/findings/f1", new StringContent(Ulcer, System.Text.Encoding.UTF8, "application/json")))
            Assert.Null((string?)(await ReadAsync(corrected))["withdrawnAt"]);
        Assert.Single(await _farm.ListAsync("/api/findings"));
        using var unknown = await _farm.Http.DeleteAsync("/api/findings/nobody");
        await Problems.AssertAsync(unknown, HttpStatusCode.NotFound, "id", "id is 'nobody': no finding has it; GET /api/findings lists those that are.");
    }

    [Fact]
    public async Task A_correction_keeps_the_earlier_wording_and_the_sender_of_that_is_not_refused()
    {
        using (var first = await PostAsync("417", Ulcer))
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        _farm.Clock.Now = Some.Now.AddHours(1);
        var worse = Ulcer.Replace("\"severity\":2", "\"severity\":3", StringComparison.Ordinal).Replace("\"id\":\"f1\",", "", StringComparison.Ordinal);
        for (var sent = 0; sent < 2; sent++)
        {
            using var corrected = await PutAsync("f1", worse);
            Assert.Equal(HttpStatusCode.OK, corrected.StatusCode);
            var answer = await ReadAsync(corrected);
            Assert.Equal(3, (int?)answer["severity"]);
            Assert.Equal(2, (int?)answer["correctable"]!["versions"]);
            Assert.Equal("2026-06-10T06:30:00.000Z", (string?)answer["correctable"]!["correctedAt"]);
        }

        using (var late = await PostAsync("417", Ulcer))
        {
            Assert.Equal(HttpStatusCode.OK, late.StatusCode);
            Assert.Equal(3, (int?)(await ReadAsync(late))["severity"]);
        }

        var history = (await _farm.Store.Reader.FindingsAsync()).Find("f1")!;
        Assert.Equal([2, 3], history.Versions.Select(version => version.Finding.Severity));
        Assert.Empty(history.Conflicts);
    }

    [Fact]
    public async Task Entered_for_the_wrong_cow_it_is_corrected_by_naming_the_right_one()
    {
        using (var first = await PostAsync("417", Ulcer))
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        using var corrected = await PutAsync("f1", Ulcer.Replace("{\"id\"", "{\"cow\":\"418\",\"id\"", StringComparison.Ordinal));
        Assert.Equal("418", (string?)(await ReadAsync(corrected))["cow"]);
        Assert.Empty(await _farm.ListAsync("/api/findings?cow=417"));
        Assert.Single(await _farm.ListAsync("/api/findings?cow=418"));
    }

    [Fact]
    public async Task A_correction_of_nothing_is_refused_and_so_is_one_that_names_another_id()
    {
        using (var unknown = await PutAsync("f9", Ulcer))
        {
            await Problems.AssertAsync(
                unknown, HttpStatusCode.NotFound, "id",
                "id is 'f9': no finding has it; GET /api/findings lists those that are, POST /api/cows/{cow}/findings takes a new one.");
        }

        using (var first = await PostAsync("417", Ulcer))
            Assert.Equal(HttpStatusCode.Created, first.StatusCode);
        using var other = await PutAsync("f1", Ulcer.Replace("\"f1\"", "\"f2\"", StringComparison.Ordinal));
        await Problems.AssertAsync(other, HttpStatusCode.BadRequest, "id", "id is 'f2' in the body and 'f1' in the route: leave it out of the body, or make them the same.");
    }

    [Theory]
    [InlineData("\"zone\":4", "\"zone\":13", "zone", "zone is 13: the claw map has zones 0 to 12.")]
    [InlineData("\"zone\":4", "\"zone\":\"four\"", "zone", "zone is 'four': a whole number is needed.")]
    [InlineData("\"mStage\":null", "\"mStage\":\"M2\"", "mStage", "mStage is M2 for SU: only digital dermatitis (DD) has stages; leave it null and give severity.")]
    [InlineData("\"blockClaw\":\"inner\"", "\"blockClaw\":\"both\"", "blockClaw", "blockClaw is both: a block goes on one claw, inner or outer, to take the weight off the other.")]
    [InlineData("\"foot\":\"rh\",", "", "foot", "foot is missing: one of lf rf lh rh.")]
    [InlineData("\"foot\":\"rh\"", "\"foot\":3", "foot", "foot is 3: text in quotes is needed.")]
    [InlineData("\"id\":\"f1\",", "", "id", "id is missing: a name of your own for this finding, 1 to 100 characters; sent twice it counts once.")]
    [InlineData("\"at\":\"2026-06-09T10:20:00.000Z\",", "", "at", "at is missing: the time the foot was in hand, RFC 3339, such as 2026-03-03T10:20:00.000Z.")]
    [InlineData("2026-06-09T10:20:00.000Z", "2026-06-12T10:20:00.000Z", "at", "at is 2026-06-12T10:20:00Z, more than a day ahead of now: the time at which it happened is needed.")]
    [InlineData("\"actions\":[\"trimmed\",\"block\"]", "\"actions\":\"trimmed\"", "actions", "actions is 'trimmed': a list of texts in quotes is needed.")]
    [InlineData("\"actions\":[\"trimmed\",\"block\"]", "\"actions\":[\"trimmed\",7]", "actions", "actions is 7: each of its items must be text in quotes.")]
    [InlineData("\"foreignBody\":null", "\"foreignBody\":{\"kind\":\"stone\",\"sizeMillimetres\":\"six\"}", "foreignBody.sizeMillimetres", "foreignBody.sizeMillimetres is 'six': a number is needed.")]
    [InlineData("\"foreignBody\":null", "\"foreignBody\":\"stone\"", "foreignBody", "foreignBody is 'stone': an object is needed.")]
    [InlineData("{\"id\"", "{\"cow\":\"418\",\"id\"", "cow", "cow is '418' in the body and '417' in the route: leave it out of the body, or make them the same.")]
    public async Task What_cannot_be_is_refused_with_what_would_be_right(string instead, string of, string field, string sentence)
    {
        var body = Ulcer.Replace(instead, of, StringComparison.Ordinal);
        Assert.NotEqual(Ulcer, body);
        using var response = await PostAsync("417", body);
        await Problems.AssertAsync(response, HttpStatusCode.BadRequest, field, sentence);
        Assert.Empty(await _farm.ListAsync("/api/findings"));
    }

    [Fact]
    public async Task What_is_unsafe_is_kept_and_warned_of_at_once()
    {
        using var response = await PostAsync("417", Ulcer.Replace("\"blockClaw\":\"inner\"", "\"blockClaw\":\"outer\"", StringComparison.Ordinal).Replace("\"signs\":[]", "\"signs\":[\"no-weight-on-leg\"]", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.Created, response.StatusCode);
        var warnings = (await ReadAsync(response))["warnings"]!.AsArray();
        Assert.Equal(["call-veterinarian", "unsafe-block"], warnings.Select(warning => (string)warning!["kind"]!));
        Assert.Equal("Call the veterinarian today: puts no weight on the leg.", (string?)warnings[0]!["sentence"]);
        Assert.Equal("blockClaw", (string?)warnings[1]!["field"]);
    }

    [Fact]
    public async Task A_cow_that_nobody_registered_was_at_the_chute_all_the_same()
    {
        using var response = await PostAsync("B/7", Ulcer);
        Assert.Equal(HttpStatusCode.Created, response.StatusCode);
        Assert.Equal("unknown-cow", (string?)Assert.Single((await ReadAsync(response))["warnings"]!.AsArray())!["kind"]);
        Assert.Single(await _farm.ListAsync("/api/findings?cow=B%2F7"));
        Assert.Equal("too-early", (string?)Assert.Single(await _farm.ListAsync("/api/cows/B%2F7/recovery"))!["status"]);
    }

    [Fact]
    public async Task Findings_are_told_apart_by_cow_and_time()
    {
        await PostAsync("417", Ulcer);
        await PostAsync("417", Ulcer.Replace("f1", "f2", StringComparison.Ordinal).Replace("06-09T10", "06-08T10", StringComparison.Ordinal));
        await PostAsync("418", Ulcer.Replace("f1", "f3", StringComparison.Ordinal));
        Assert.Equal(["f2", "f1", "f3"], await IdsAsync("/api/findings"));
        Assert.Equal(["f2", "f1"], await IdsAsync("/api/findings?cow=417"));
        Assert.Equal(["f1", "f3"], await IdsAsync("/api/findings?from=2026-06-09"));
        Assert.Equal(["f2"], await IdsAsync("/api/findings?to=2026-06-09"));
        Assert.Equal(["f1"], await IdsAsync("/api/findings?page=2&pageSize=1"));
        using var wrong = await _farm.Http.GetAsync("/api/findings?from=yesterday");
        await Problems.AssertAsync(wrong, HttpStatusCode.BadRequest, "from", "from is 'yesterday': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed.");
    }

    private async Task<string[]> IdsAsync(string route) => [.. (await _farm.ListAsync(route)).Select(finding => (string)finding!["id"]!)];

    private Task<HttpResponseMessage> PostAsync(string cow, string body) =>
        _farm.Http.PostAsync($"/api/cows/{Uri.EscapeDataString(cow)}/findings", new StringContent(body, null, "application/json"));

    private Task<HttpResponseMessage> PutAsync(string id, string body) => _farm.Http.PutAsync($"/api/findings/{id}", new StringContent(body, null, "application/json"));

    private static async Task<JsonNode> ReadAsync(HttpResponseMessage response)
    {
        var body = await response.Content.ReadAsStringAsync();
        Assert.True(response.IsSuccessStatusCode, body);
        return JsonNode.Parse(body)!;
    }
}
