using System.Net;
using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

public sealed class MorningTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_farm_where_nothing_has_crossed_says_so()
    {
        var text = Html.Text(await _farm.PageAsync("/"));
        Assert.Contains("Nothing has crossed a platform yet.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("No cow is flagged", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Learning", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_quiet_day_says_so_and_a_young_herd_that_it_is_being_learnt()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddDays(-11)), Some.Passage("b", 417, Some.Now.AddHours(-1)));
        var text = Html.Text(await _farm.PageAsync("/"));
        Assert.Contains("Wed 10 Jun, none to look at", text, StringComparison.Ordinal);
        Assert.Contains("No cow is flagged.", text, StringComparison.Ordinal);
        Assert.Contains("Learning the herd: day 12 of 35.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Learning_is_over_after_35_days()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddDays(-35)), Some.Passage("b", 417, Some.Now.AddHours(-1)));
        Assert.DoesNotContain("Learning", Html.Text(await _farm.PageAsync("/")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_flagged_cow_shows_number_pen_leg_drop_since_when_and_what_to_do()
    {
        await _farm.RegisterAsync(Some.Cow("417", 417));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(Some.Alert("417", Leg.Rh, drop: 14.2));
        var html = await _farm.PageAsync("/");
        var text = Html.Text(html);
        Assert.Contains("Wed 10 Jun, 1 to look at", text, StringComparison.Ordinal);
        Assert.Contains("Look today: lift the foot within 48 hours", text, StringComparison.Ordinal);
        Assert.Contains("417 Pen 2 Right hind 14 % less weight, for 5 days", text, StringComparison.Ordinal);
        Assert.Contains("Lift both hind feet.", text, StringComparison.Ordinal);
        // The picture says it in words and marks it by shape.
        Assert.Contains("aria-label=\"Seen from above, head up; marked: right hind foot.\"", html, StringComparison.Ordinal);
        Assert.Equal(2, html.Split("feet-sore").Length);
        // One look says when not to wait.
        Assert.Contains("Call the veterinarian the same day", text, StringComparison.Ordinal);
        Assert.Contains("it does not diagnose", text, StringComparison.Ordinal);
        Assert.Contains("Set to 1 false flag a week per 100 cows: about one flag in 2 to 3 is true.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_stays_behind_comes_first_then_today_next_visit_and_watch()
    {
        await SampleFarm.FillAsync(_farm, days: 20, others: 2);
        var html = await _farm.PageAsync("/");
        Assert.Equal(["301", "417", "87", "1203", "62", "55"], Html.Elements(html, "span", "flag-number").Select(Html.Text));
        var first = Html.Text(Html.Elements(html, "li", "flag")[0]);
        Assert.Contains("Not seen since Mon 8 Jun, 06:31, 47 hours ago", first, StringComparison.Ordinal);
        Assert.Contains("Both hind, left more", Html.Text(html), StringComparison.Ordinal);
        Assert.Contains("5 to look at", Html.Text(html), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Platform_troubles_stand_above_everything()
    {
        await SampleFarm.FillAsync(_farm, days: 3, others: 2);
        await _farm.TakeAsync(new StatusInput(Some.Platform, false, null, null));
        var text = Html.Text(await _farm.PageAsync("/"));
        Assert.True(
            text.IndexOf("The platform has gone offline", StringComparison.Ordinal) is > 0 and var at && at < text.IndexOf("Find first", StringComparison.Ordinal), text);
    }

    [Fact]
    public async Task A_flag_is_closed_by_its_button_without_script()
    {
        await _farm.RegisterAsync(Some.Cow("417", 417));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        var html = await _farm.PageAsync("/");
        Assert.Contains($"action=\"/alerts/{alert.Id}/close\"", html, StringComparison.Ordinal);
        foreach (var reason in CloseReasons.ByHand)
            Assert.Contains($"name=\"reason\" value=\"{reason.WireName()}\"", html, StringComparison.Ordinal);

        using var closed = await CloseAsync(alert.Id, "seen-walking-sound", "/");
        Assert.Equal(HttpStatusCode.SeeOther, closed.StatusCode);
        Assert.Equal($"/?closed={alert.Id}", closed.Headers.Location?.ToString());
        var text = Html.Text(await _farm.PageAsync(closed.Headers.Location!.ToString()));
        Assert.Contains("Cow 417: flag closed (Right hind). Reason: Seen walking sound.", text, StringComparison.Ordinal);
        Assert.Contains("No cow is flagged.", text, StringComparison.Ordinal);

        using var again = await CloseAsync(alert.Id, "other", "/");
        Assert.Equal(HttpStatusCode.Conflict, again.StatusCode);
        Assert.Contains("was closed at", Html.Text(await again.Content.ReadAsStringAsync()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("https://evil.example/", "/")]
    [InlineData("//evil.example/", "/")]
    [InlineData("/cows/417", "/cows/417")]
    public async Task Closing_leads_back_to_own_pages_only(string back, string expected)
    {
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        using var closed = await CloseAsync(alert.Id, "other", back);
        Assert.Equal($"{expected}?closed={alert.Id}", closed.Headers.Location?.ToString());
    }

    [Fact]
    public async Task A_closing_from_another_site_is_refused()
    {
        var alert = Some.Alert("417");
        await _farm.RaiseAsync(alert);
        using var request = new HttpRequestMessage(HttpMethod.Post, $"/alerts/{alert.Id}/close")
        {
            Content = new FormUrlEncodedContent([new("reason", "other")]), Headers = { { "Sec-Fetch-Site", "cross-site" } },
        };
        using var response = await _farm.Http.SendAsync(request);
        Assert.Equal(HttpStatusCode.Forbidden, response.StatusCode);
        Assert.Single(await _farm.ListAsync("/api/flags"));
    }

    private Task<HttpResponseMessage> CloseAsync(string id, string reason, string back) =>
        _farm.Http.PostAsync($"/alerts/{id}/close", new FormUrlEncodedContent([new("reason", reason), new("back", back)]));
}
