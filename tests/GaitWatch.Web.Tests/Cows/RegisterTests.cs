using System.Net;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

public sealed class RegisterTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_cow_is_registered_changed_and_found_again()
    {
        using var created = await _farm.PutAsync("/api/cows/417", new { eid = "982000123456789", pen = "2", parity = 3, calvedOn = "2026-01-11" });
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        Assert.Equal("/api/cows/417", created.Headers.Location?.ToString());
        var cow = JsonNode.Parse(await created.Content.ReadAsStringAsync())!.AsObject();
        Assert.Equal(
            ["calvedOn", "cow", "driedOffOn", "dueOn", "eid", "lastSeenAt", "leftOn", "parity", "pen"], cow.Select(member => member.Key).Order(StringComparer.Ordinal));
        Assert.Equal("2026-01-11", (string?)cow["calvedOn"]);
        Assert.Equal(3, (int?)cow["parity"]);
        Assert.Null(cow["dueOn"]);

        _farm.Clock.Now = Some.Now.AddHours(1);
        using var moved = await _farm.PutAsync("/api/cows/417", new { cow = "417", eid = "982000123456789", pen = "5", parity = 3, calvedOn = "2026-01-11" });
        Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
        Assert.Equal("5", (string?)(await _farm.GetAsync("/api/cows/417"))["pen"]);
        Assert.Single(await _farm.ListAsync("/api/cows"));
    }

    [Fact]
    public async Task What_was_entered_after_the_last_crossing_is_seen_at_once()
    {
        await _farm.RegisterAsync(Some.Cow("417", 417, pen: "2"));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-5)));
        using var moved = await _farm.PutAsync("/api/cows/417", new { eid = Some.Tag(417).ToString(), pen = "5" });
        Assert.Equal("5", (string?)JsonNode.Parse(await moved.Content.ReadAsStringAsync())!["pen"]);
    }

    [Fact]
    public async Task A_cow_known_by_her_tag_alone_is_in_the_herd()
    {
        await _farm.PassAsync(Some.Passage("a", 5, Some.Now.AddHours(-1)));
        Assert.Equal("982000000000005", (string?)Assert.Single(await _farm.ListAsync("/api/cows"))!["cow"]);
    }

    [Fact]
    public async Task A_name_may_hold_what_a_path_may_not()
    {
        using var created = await _farm.PutAsync("/api/cows/B%2F7%20%C3%A9", new { pen = "2" });
        Assert.Equal(HttpStatusCode.Created, created.StatusCode);
        Assert.Equal("B/7 é", (string?)Assert.Single(await _farm.ListAsync("/api/cows"))!["cow"]);
        Assert.Equal("2", (string?)(await _farm.GetAsync(created.Headers.Location!.ToString()))["pen"]);
    }

    [Theory]
    [InlineData("""{"eid":"12"}""", "eid", "eid is '12': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.")]
    [InlineData("""{"eid":982000123456789}""", "eid", "eid is 982000123456789: text in quotes is needed.")]
    [InlineData("""{"parity":2.5}""", "parity", "parity is 2.5: a whole number is needed.")]
    [InlineData("""{"parity":21}""", "parity", "parity is 21: 0 to 20 calvings.")]
    [InlineData("""{"calvedOn":"11-01-2026"}""", "calvedOn", "calvedOn is '11-01-2026': a date such as 2026-03-02 is needed.")]
    [InlineData("""{"from":true}""", "from", "from is true: a date such as 2026-03-02 or a time such as 2026-03-02T05:14:07.250Z is needed.")]
    [InlineData("""{"cow":"418"}""", "cow", "cow is '418' in the body and '417' in the route: leave it out of the body, or make them the same.")]
    [InlineData("""{"calvedOn":"2026-01-11","driedOffOn":"2025-11-01"}""", "driedOffOn", "driedOffOn is 2025-11-01, before calvedOn 2026-01-11: a cow is dried off after she calved; leave it empty while she is in milk.")]
    public async Task A_registration_that_cannot_be_taken_is_named_with_what_would_be_right(string body, string field, string sentence)
    {
        using var response = await _farm.Http.PutAsync("/api/cows/417", new StringContent(body, null, "application/json"));
        await Problems.AssertAsync(response, HttpStatusCode.BadRequest, field, sentence);
        Assert.Empty(await _farm.ListAsync("/api/cows"));
    }

    [Theory]
    [InlineData("text/plain", "Content-Type is 'text/plain; charset=utf-8': application/json is needed.")]
    [InlineData("application/x-www-form-urlencoded", "Content-Type is 'application/x-www-form-urlencoded; charset=utf-8': application/json is needed.")]
    public async Task A_body_of_another_kind_is_refused(string mediaType, string sentence)
    {
        using var response = await _farm.Http.PutAsync("/api/cows/417", new StringContent("{}", System.Text.Encoding.UTF8, mediaType));
        await Problems.AssertAsync(response, HttpStatusCode.UnsupportedMediaType, "Content-Type", sentence);
    }

    [Fact]
    public async Task A_body_that_is_too_large_is_refused_whether_its_length_is_told_or_not()
    {
        var body = $$"""{"pen":"{{new string('x', 80_000)}}"}""";
        using var told = await _farm.Http.PutAsync("/api/cows/417", new StringContent(body, null, "application/json"));
        await Problems.AssertAsync(told, HttpStatusCode.RequestEntityTooLarge, "body", "body is longer than 64 KiB, the most that this route takes.");

        using var request = new HttpRequestMessage(HttpMethod.Put, "/api/cows/417")
        {
            Content = new StringContent(body, null, "application/json"), Headers = { TransferEncodingChunked = true },
        };
        using var untold = await _farm.Http.SendAsync(request);
        await Problems.AssertAsync(untold, HttpStatusCode.RequestEntityTooLarge, "body", "body is longer than 64 KiB, the most that this route takes.");
    }
}
