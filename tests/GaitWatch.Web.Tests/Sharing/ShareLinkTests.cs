using System.Net;
using System.Text;

namespace GaitWatch.Web.Tests;

/// <summary>A link opens one visit's list and chute, nothing else, and ends with the day after the visit.</summary>
public sealed class ShareLinkTests : IAsyncLifetime
{
    private const string Finding = """{"id":"s1","at":"2026-06-10T05:29:00.000Z","foot":"rh","claw":"outer","zone":4,"lesion":"SU","actions":["trimmed"]}""";

    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("418", 418));
        await _farm.RaiseAsync(Some.Alert("417"));
        await PlanAsync("2026-06-12");
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task It_opens_the_list_and_the_chute_and_takes_findings()
    {
        var link = await GiveAsync("2026-06-12");
        var list = await _farm.PageAsync(link);
        Assert.Contains("Right hind first", Html.Text(list), StringComparison.Ordinal);
        // No way from here to the farm's other pages.
        Assert.All(Html.Addresses(list), address => Assert.True(address.StartsWith("/assets/", StringComparison.Ordinal) || address.StartsWith(link, StringComparison.Ordinal), address));
        Assert.Contains($"data-api=\"{link}/api\"", await _farm.PageAsync($"{link}/chute"), StringComparison.Ordinal);
        Assert.Equal("2026-06-12", (string?)(await _farm.GetAsync($"{link}/chute/data"))["date"]);

        for (var sent = 0; sent < 2; sent++)
        {
            using var taken = await SendAsync(link);
            Assert.Equal(sent == 0 ? HttpStatusCode.Created : HttpStatusCode.OK, taken.StatusCode);
        }

        Assert.Equal("417", (string?)Assert.Single(await _farm.ListAsync("/api/findings"))!["cow"]);
        using var back = await _farm.Http.DeleteAsync($"{link}/api/findings/s1");
        Assert.Equal(HttpStatusCode.OK, back.StatusCode);
        Assert.Empty(await _farm.ListAsync("/api/findings"));
    }

    [Fact]
    public async Task It_opens_nothing_else()
    {
        var link = await GiveAsync("2026-06-12");
        using (var old = await _farm.PostAsync("/api/cows/418/findings", new { id = "old", at = "2026-06-01T08:00:00Z", foot = "lh", lesion = "none", enteredAt = "2026-06-01T08:00:00Z" }))
            Assert.Equal(HttpStatusCode.Created, old.StatusCode);
        using (var refused = await _farm.Http.DeleteAsync($"{link}/api/findings/old"))
            await Problems.AssertAsync(refused, HttpStatusCode.Conflict, "id", "id is of a finding that is older than the link: only the farm can take it back.");
        foreach (var route in (string[])["/api/cows", "/api/alerts", "/api/findings", "/api/visits", "/cows", "/chute/../../cows", "/visits/next/share"])
        {
            using var answer = await _farm.Http.GetAsync(link + route);
            Assert.Contains(answer.StatusCode, (HttpStatusCode[])[HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed]);
        }
    }

    [Fact]
    public async Task It_ends_with_the_day_after_the_visit_at_the_farms_midnight()
    {
        var link = await GiveAsync("2026-06-12");
        // Amsterdam is two hours ahead in June: the 13th ends at 22:00 UTC.
        _farm.Clock.Now = new DateTimeOffset(2026, 6, 13, 21, 59, 59, TimeSpan.Zero);
        Assert.Equal("2026-06-12", (string?)(await _farm.GetAsync($"{link}/chute/data"))["date"]);
        _farm.Clock.Now = new DateTimeOffset(2026, 6, 13, 22, 0, 0, TimeSpan.Zero);
        await AssertEndedAsync(link, "The link was for the visit of 2026-06-12 and ended with the day after: ask the farm for one for the next visit.");
        using var none = await _farm.Http.GetAsync("/api/visits/2026-06-12/share");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task It_ends_when_the_visit_is_moved_and_does_not_come_back_with_another_one()
    {
        var link = await GiveAsync("2026-06-12");
        _farm.Clock.Now = Some.Now.AddMinutes(5);
        using (var moved = await _farm.PutAsync("/api/visits/2026-06-12", new { date = "2026-06-15" }))
            Assert.Equal(HttpStatusCode.OK, moved.StatusCode);
        await AssertEndedAsync(link, "The visit of 2026-06-12 was moved or cancelled: ask the farm for a new link.");
        Assert.Equal("2026-06-15", (string?)(await _farm.GetAsync($"{await GiveAsync("2026-06-15")}/chute/data"))["date"]);
        _farm.Clock.Now = Some.Now.AddMinutes(6);
        await PlanAsync("2026-06-12");
        await AssertEndedAsync(link, "The visit of 2026-06-12 was moved or cancelled: ask the farm for a new link.");
        Assert.NotEqual(link, await GiveAsync("2026-06-12"));
    }

    [Fact]
    public async Task It_ends_when_the_visit_is_cancelled()
    {
        var link = await GiveAsync("2026-06-12");
        _farm.Clock.Now = Some.Now.AddMinutes(5);
        using (var cancelled = await _farm.Http.DeleteAsync("/api/visits/2026-06-12"))
            Assert.Equal(HttpStatusCode.OK, cancelled.StatusCode);
        await AssertEndedAsync(link, "The visit of 2026-06-12 was moved or cancelled: ask the farm for a new link.");
    }

    [Fact]
    public async Task One_that_the_farm_did_not_give_out_opens_nothing()
    {
        var link = await GiveAsync("2026-06-12");
        var forged = link[..^1] + (link[^1] == 'A' ? 'B' : 'A');
        await AssertRefusedAsync(forged, HttpStatusCode.NotFound, "The link was not given out by this farm, or not copied whole: ask the farm for it again.");
        using var page = new HttpRequestMessage(HttpMethod.Get, forged);
        page.Headers.Add("Accept", "text/html");
        using var shown = await _farm.Http.SendAsync(page);
        Assert.Equal(HttpStatusCode.NotFound, shown.StatusCode);
        Assert.DoesNotContain("417", Html.Text(await shown.Content.ReadAsStringAsync()), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_farms_page_shows_it_as_text_and_as_a_picture_for_a_camera()
    {
        var page = await _farm.PageAsync("/visits/next/share");
        Assert.Contains($"value=\"{_farm.Http.BaseAddress}share/", page, StringComparison.Ordinal);
        Assert.Contains("class=\"share-code\"", page, StringComparison.Ordinal);
        Assert.Contains("The link ends Sun 14 Jun, 00:00", Html.Text(page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Its_key_is_the_farms_own_and_for_no_one_elses_eyes()
    {
        await GiveAsync("2026-06-12");
        var file = Path.Combine(Path.GetDirectoryName(_farm.DatabaseFile)!, ShareKey.FileName);
        Assert.Equal(32, new FileInfo(file).Length);
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
        Assert.Equal(File.ReadAllBytes(file), ShareKey.Of(Path.GetDirectoryName(file)!));
    }

    private async Task PlanAsync(string day)
    {
        using var planned = await _farm.PutAsync($"/api/visits/{day}", new { trimmer = "Anna", places = 20 });
        Assert.Equal(HttpStatusCode.Created, planned.StatusCode);
    }

    // The link's path.
    private async Task<string> GiveAsync(string day) => new Uri((string)(await _farm.GetAsync($"/api/visits/{day}/share"))["address"]!).AbsolutePath;

    private Task<HttpResponseMessage> SendAsync(string link) =>
        _farm.Http.PostAsync($"{link}/api/cows/417/findings", new StringContent(Finding, Encoding.UTF8, "application/json"));

    private Task AssertEndedAsync(string link, string sentence) => AssertRefusedAsync(link, HttpStatusCode.Gone, sentence);

    private async Task AssertRefusedAsync(string link, HttpStatusCode status, string sentence)
    {
        using (var data = await _farm.Http.GetAsync($"{link}/chute/data"))
            await Problems.AssertAsync(data, status, "link", sentence);
        using (var sent = await SendAsync(link))
            await Problems.AssertAsync(sent, status, "link", sentence);
        using (var back = await _farm.Http.DeleteAsync($"{link}/api/findings/s1"))
            await Problems.AssertAsync(back, status, "link", sentence);
        foreach (var route in (string[])["", "/chute", "/chute/worker.js", "/chute/app.webmanifest"])
        {
            using var page = await _farm.Http.GetAsync(link + route);
            Assert.Equal(status, page.StatusCode);
        }

        Assert.Empty(await _farm.ListAsync("/api/findings"));
    }
}
