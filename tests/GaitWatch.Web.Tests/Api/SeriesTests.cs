using System.Net;
using System.Net.Http.Json;
using System.Text.Json;

namespace GaitWatch.Web.Tests;

public sealed class SeriesTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Where_no_export_is_set_up_it_says_so_and_refuses_to_bring_anything()
    {
        var series = await _farm.GetAsync("/api/series");
        Assert.False((bool)series["isSetUp"]!);
        Assert.Empty((await _farm.GetAsync("/api/series/refused")).AsArray());
        using var answer = await _farm.Http.PostAsJsonAsync("/api/series/backfill", new { since = "2026-01-01" });
        Assert.Equal(HttpStatusCode.Conflict, answer.StatusCode);
        Assert.Contains("GaitWatch:Influx:Url", await answer.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("""{ "since": "yesterday" }""")]
    [InlineData("""{ "since": 5 }""")]
    [InlineData("[")]
    public async Task A_day_that_is_none_is_refused(string body)
    {
        using var content = new StringContent(body, System.Text.Encoding.UTF8, "application/json");
        using var answer = await _farm.Http.PostAsync("/api/series/backfill", content);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.NotEmpty(JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement.GetProperty("errors").EnumerateObject());
    }
}
