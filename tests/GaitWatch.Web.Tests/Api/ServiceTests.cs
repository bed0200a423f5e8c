using System.Net;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>What holds for every route: health, refusals that no route makes itself, protection against other sites.</summary>
public sealed class ServiceTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Alive_and_ready()
    {
        Assert.Equal("""{"alive":true}""", (await _farm.GetAsync("/healthz")).ToJsonString());
        Assert.Equal("""{"ready":true,"reasons":[]}""", (await _farm.GetAsync("/readyz")).ToJsonString());
    }

    [Fact]
    public async Task Paths_and_methods_that_are_not_served_are_named()
    {
        using var path = await _farm.Http.GetAsync("/api/cattle");
        await Problems.AssertAsync(path, HttpStatusCode.NotFound, "path", "path is '/api/cattle': there is no such route; /openapi/v1.json lists those that are.");
        using var method = await _farm.Http.DeleteAsync("/api/flags");
        await Problems.AssertAsync(method, HttpStatusCode.MethodNotAllowed, "method", "method is DELETE: '/api/flags' takes GET.");
    }

    [Fact]
    public async Task A_store_that_cannot_be_read_is_said_with_503_and_readiness_says_why()
    {
        // Readers open the file anew and find something that is no store; who writes keeps the one it has open.
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        foreach (var part in (string[])["", "-wal", "-shm"])
            File.Delete(_farm.DatabaseFile + part);
        await File.WriteAllTextAsync(_farm.DatabaseFile, new string('x', 8192));
        using var response = await _farm.Http.GetAsync("/api/cows");
        var problem = await Problems.ReadAsync(response, HttpStatusCode.ServiceUnavailable);
        Assert.StartsWith("The store ", (string?)problem["errors"]!["store"]![0], StringComparison.Ordinal);
        Assert.Equal("10", Assert.Single(response.Headers.GetValues("Retry-After")));
        Assert.Contains("default-src 'none'", Assert.Single(response.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        using var ready = await _farm.Http.GetAsync("/readyz");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, ready.StatusCode);
        Assert.Contains("The store ", await ready.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    public async Task A_write_on_behalf_of_another_site_is_refused(string header, string value)
    {
        using var request = new HttpRequestMessage(HttpMethod.Put, "/api/cows/417") { Content = new StringContent("{}", null, "application/json"), Headers = { { header, value } } };
        using var response = await _farm.Http.SendAsync(request);
        await Problems.AssertAsync(response, HttpStatusCode.Forbidden, header, $"{header} is '{value}': a page of another site may not write here.");
        Assert.Empty(await _farm.ListAsync("/api/cows"));
    }

    [Fact]
    public async Task A_write_from_an_own_page_is_taken()
    {
        foreach (var (header, value) in new[] { ("Sec-Fetch-Site", "same-origin"), ("Sec-Fetch-Site", "none"), ("Origin", _farm.Http.BaseAddress!.GetLeftPart(UriPartial.Authority)) })
        {
            using var request = new HttpRequestMessage(HttpMethod.Put, "/api/cows/417") { Content = new StringContent("{}", null, "application/json"), Headers = { { header, value } } };
            using var response = await _farm.Http.SendAsync(request);
            Assert.True(response.IsSuccessStatusCode, header);
        }
    }

    [Fact]
    public async Task Answers_carry_the_headers_that_keep_a_page_to_itself()
    {
        using var response = await _farm.Http.GetAsync("/api/flags");
        var policy = Assert.Single(response.Headers.GetValues("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
        Assert.False(response.Headers.Contains("Access-Control-Allow-Origin"));
    }
}

/// <summary>A farm whose analysis stands still.</summary>
public sealed class StandstillTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new() { Folds = false, Options = new() { WriteWait = TimeSpan.FromMilliseconds(200) } };

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_write_that_is_safe_but_does_not_show_yet_is_accepted()
    {
        using var response = await _farm.PutAsync("/api/cows/417", new { pen = "2" });
        Assert.Equal(HttpStatusCode.Accepted, response.StatusCode);
        Assert.Equal(1, (int?)(await _farm.GetAsync("/api/ingest"))["pending"]);
    }

    [Fact]
    public async Task The_service_is_not_ready_when_the_analysis_stands_still_with_work_waiting()
    {
        await _farm.TakeAsync(new DevicePassageInput(Some.Platform, Some.Passage("a", 1, Some.Now.AddHours(-1))));
        using var first = await _farm.Http.GetAsync("/readyz");
        Assert.Equal(HttpStatusCode.OK, first.StatusCode);
        _farm.Clock.Now += TimeSpan.FromMinutes(5);
        using var later = await _farm.Http.GetAsync("/readyz");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, later.StatusCode);
        Assert.Contains(
            "The analysis has stood still for 5 minutes with 1 inputs waiting: see the log for what stops it. Nothing that came in is lost.",
            await later.Content.ReadAsStringAsync(), StringComparison.Ordinal);
    }
}
