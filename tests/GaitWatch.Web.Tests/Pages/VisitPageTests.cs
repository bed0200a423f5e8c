using System.Net;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

/// <summary>The trim list as a page: what it tells, what is decided on it, and what becomes of a form that is filled in wrongly.</summary>
public sealed class VisitPageTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("87", 87, pen: "1"), Some.Cow("62", 62, pen: "1"), Some.Cow("9", 9));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)), Some.Passage("b", 87, Some.Now.AddHours(-1)), Some.Passage("c", 62, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(
            Some.Alert("417", Leg.Rh, drop: 22), Some.Alert("87", Leg.Lf, drop: 12, urgency: Urgency.NextVisit), Some.Alert("62", Leg.Lh, drop: 9, urgency: Urgency.NextVisit));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Without_a_visit_it_says_who_would_be_on_the_list_and_lets_one_be_planned()
    {
        var text = Html.Text(await _farm.PageAsync("/visits/next"));
        Assert.Contains("No visit is planned.", text, StringComparison.Ordinal);
        Assert.Contains("417 Right hind first", text, StringComparison.Ordinal);
        using var planned = await SendAsync("/visits", ("date", "2026-06-12"), ("half", "am"), ("trimmer", "Anna"), ("places", "2"));
        Assert.Equal("/visits/2026-06-12", planned.Headers.Location?.ToString());
        var page = Html.Text(await _farm.PageAsync("/visits/next"));
        Assert.Contains("Trim list Fri 12 Jun, morning, Anna", page, StringComparison.Ordinal);
        Assert.Contains("0 of 2 done, time for 2 cows", page, StringComparison.Ordinal);
        Assert.Contains("No place on this visit", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_goes_pen_by_pen_after_those_for_today_and_says_leg_drop_since_and_care()
    {
        await PlanAsync();
        var html = await _farm.PageAsync("/visits/next");
        var text = Html.Text(html);
        Assert.Equal(["417", "87", "62"], Html.Elements(html, "a", "trim-number").Select(Html.Text));
        Assert.Contains("First, whatever the pen 1 cow 417 Right hind first flagged, 22 % less weight, since 5 Jun (pen 2) Lift both hind feet.", text, StringComparison.Ordinal);
        Assert.Contains("Pen 1 2 cows 87 Left fore first flagged, 12 % less weight, since 5 Jun Lift both fore feet, then both hind.", text, StringComparison.Ordinal);
        Assert.Contains("Call the veterinarian the same day", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ticks_and_order_survive_a_reload_and_are_taken_back()
    {
        await PlanAsync();
        using var tick = await SendAsync("/visits/2026-06-12/cows/417/done");
        Assert.Equal(HttpStatusCode.SeeOther, tick.StatusCode);
        using var move = await SendAsync("/visits/2026-06-12/cows/62/place", ("before", "87"));
        var html = await _farm.PageAsync("/visits/2026-06-12");
        Assert.Contains("1 of 3 done", Html.Text(html), StringComparison.Ordinal);
        Assert.Equal(["417", "62", "87"], Html.Elements(html, "a", "trim-number").Select(Html.Text));
        _farm.Clock.Now = Some.Now.AddMinutes(1);
        using var back = await SendAsync("/visits/2026-06-12/cows/417/not-done");
        Assert.Contains("0 of 3 done", Html.Text(await _farm.PageAsync("/visits/next")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reason_left_out_is_said_at_the_field_and_a_given_one_takes_her_off_and_back()
    {
        await PlanAsync();
        using var blank = await SendAsync("/visits/2026-06-12/cows/87/removed", ("reason", " "));
        Assert.Equal(HttpStatusCode.BadRequest, blank.StatusCode);
        var html = await blank.Content.ReadAsStringAsync();
        Assert.Single(Html.Elements(html, "p", "fault"));
        Assert.Contains("aria-invalid=\"true\"", html, StringComparison.Ordinal);

        using var off = await SendAsync("/visits/2026-06-12/cows/87/removed", ("reason", "the veterinarian was here"));
        Assert.Equal(HttpStatusCode.SeeOther, off.StatusCode);
        var text = Html.Text(await _farm.PageAsync("/visits/next"));
        Assert.Contains("Taken off by hand 87: the veterinarian was here", text, StringComparison.Ordinal);
        _farm.Clock.Now = Some.Now.AddMinutes(1);
        using var back = await SendAsync("/visits/2026-06-12/cows/87/as-rule");
        Assert.DoesNotContain("Taken off by hand", Html.Text(await _farm.PageAsync("/visits/next")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nothing_typed_is_lost_when_a_form_is_not_taken()
    {
        await PlanAsync();
        using var unknown = await SendAsync("/visits/2026-06-12/pinned", ("cow", "4711"), ("reason", "walks <short>"), ("foot", "lh"));
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
        var html = await unknown.Content.ReadAsStringAsync();
        Assert.Contains("value=\"4711\"", html, StringComparison.Ordinal);
        Assert.Contains("value=\"walks &lt;short&gt;\"", html, StringComparison.Ordinal);
        Assert.Matches("<option value=\"lh\" selected", html);
        Assert.Contains("No cow of that number is known", Html.Text(html), StringComparison.Ordinal);

        using var places = await SendAsync("/visits", ("date", "2026-06-19"), ("trimmer", "Anna"), ("places", "many"));
        Assert.Equal(HttpStatusCode.BadRequest, places.StatusCode);
        var form = await places.Content.ReadAsStringAsync();
        Assert.Contains("value=\"many\"", form, StringComparison.Ordinal);
        Assert.Contains("A whole number of cows, such as 30", Html.Text(form), StringComparison.Ordinal);

        using var good = await SendAsync("/visits/2026-06-12/pinned", ("cow", "9"), ("reason", "walks short"), ("foot", "lh"));
        Assert.Equal(HttpStatusCode.SeeOther, good.StatusCode);
        Assert.Contains("9 Left hind first to be seen again, put on by hand", Html.Text(await _farm.PageAsync("/visits/next")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_visit_is_moved_and_cancelled_from_the_page()
    {
        await PlanAsync();
        _farm.Clock.Now = Some.Now.AddMinutes(1);
        using var moved = await SendAsync("/visits/2026-06-12", ("date", "2026-06-15"), ("half", ""), ("trimmer", "Anna"), ("places", ""));
        Assert.Equal("/visits/2026-06-15", moved.Headers.Location?.ToString());
        _farm.Clock.Now = Some.Now.AddMinutes(2);
        using var cancelled = await SendAsync("/visits/2026-06-15/cancel");
        Assert.Equal("/visits/next", cancelled.Headers.Location?.ToString());
        Assert.Empty(await _farm.ListAsync("/api/visits"));
        using var nonsense = await _farm.Http.GetAsync("/visits/someday");
        Assert.Equal(HttpStatusCode.NotFound, nonsense.StatusCode);
    }

    private async Task PlanAsync()
    {
        using var planned = await SendAsync("/visits", ("date", "2026-06-12"), ("half", ""), ("trimmer", "Anna"), ("places", ""));
        Assert.Equal(HttpStatusCode.SeeOther, planned.StatusCode);
    }

    private Task<HttpResponseMessage> SendAsync(string route, params (string Name, string Value)[] fields) =>
        _farm.Http.PostAsync(route, new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))));
}
