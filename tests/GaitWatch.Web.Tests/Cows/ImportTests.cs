using System.Net;
using System.Text;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

public sealed class ImportTests : IAsyncLifetime
{
    private const string Mixed = "cow,eid,pen,parity,calvedOn,breed\n417,982000000000417,2,3,2026-01-11,HF\n418,bad,2,,,HF\n419,,3,,,HF\n";
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_good_file_is_taken_whole()
    {
        using var response = await PostAsync("/api/herd", Mixed.Replace("bad", "", StringComparison.Ordinal));
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal(
            """{"taken":3,"rejected":[],"notices":["Column 'breed' is ignored: it is not part of the register."]}""",
            await response.Content.ReadAsStringAsync());
        Assert.Equal(["417", "418", "419"], (await _farm.ListAsync("/api/cows")).Select(cow => (string)cow!["cow"]!));
    }

    [Fact]
    public async Task A_bad_row_is_named_and_nothing_is_taken()
    {
        using var response = await PostAsync("/api/herd", Mixed);
        var problem = await Problems.ReadAsync(response, HttpStatusCode.BadRequest);
        Assert.Equal("eid is 'bad': 15 digits by ISO 11784, a 3-digit country or maker code and 12 digits.", (string?)problem["errors"]!["line 3, eid"]![0]);
        Assert.Equal(0, (int?)problem["taken"]);
        Assert.Equal(3, (int?)problem["rejected"]![0]!["line"]);
        Assert.Equal("eid", (string?)problem["rejected"]![0]!["field"]);
        Assert.Single(problem["notices"]!.AsArray());
        Assert.Empty(await _farm.ListAsync("/api/cows"));
    }

    [Fact]
    public async Task The_good_rows_are_taken_where_that_is_asked_for()
    {
        using var response = await PostAsync("/api/herd?partial=true", Mixed);
        var view = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
        Assert.Equal(2, (int?)view["taken"]);
        Assert.Equal(3, (int?)Assert.Single(view["rejected"]!.AsArray())!["line"]);
        Assert.Equal(["417", "419"], (await _farm.ListAsync("/api/cows")).Select(cow => (string)cow!["cow"]!));
    }

    [Fact]
    public async Task Words_for_partial_and_at_are_checked()
    {
        using var partial = await PostAsync("/api/herd?partial=maybe", Mixed);
        await Problems.AssertAsync(partial, HttpStatusCode.BadRequest, "partial", "partial is 'maybe': one of true, false is needed.");
        using var at = await PostAsync("/api/herd?at=2030-01-01", Mixed);
        await Problems.AssertAsync(
            at, HttpStatusCode.BadRequest, "at", "at is 2029-12-31T23:00:00Z, more than a day ahead of now: the time at which it happened is needed.");
    }

    [Fact]
    public async Task Json_is_refused()
    {
        using var response = await _farm.PostAsync("/api/herd", new { cow = "417" });
        await Problems.AssertAsync(
            response, HttpStatusCode.UnsupportedMediaType, "Content-Type", "Content-Type is 'application/json; charset=utf-8': text/csv is needed.");
    }

    private Task<HttpResponseMessage> PostAsync(string route, string csv) => _farm.Http.PostAsync(route, new StringContent(csv, Encoding.UTF8, "text/csv"));
}
