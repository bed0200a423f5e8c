using System.Net;
using System.Text;
using GaitWatch.Gait;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

public sealed class PageTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_cows_page_shows_why_she_is_flagged_and_how_each_leg_fares()
    {
        await SampleFarm.FillAsync(_farm, others: 1);
        var html = await _farm.PageAsync("/cows/417");
        var text = Html.Text(html);
        Assert.Contains("Cow 417 pen 1, 101 days in milk", text, StringComparison.Ordinal);
        Assert.Contains("Her right hind leg carries 22 % less than is normal for her, since about Mon 1 Jun.", text, StringComparison.Ordinal);
        Assert.Contains("Between 19 and 25 % less, with 95 % certainty", text, StringComparison.Ordinal);
        var charts = Html.Elements(html, "figure", "chart");
        // The flagged leg first, then in the order of the contract.
        Assert.Equal(["Right hind", "Left fore", "Right fore", "Left hind"], charts.Select(chart => Html.Text(chart.Split("<h3>")[1].Split("</h3>")[0])));
        Assert.Contains("chart-mark-onset", charts[0], StringComparison.Ordinal);
        Assert.Contains("chart-mark-raised", charts[0], StringComparison.Ordinal);
        Assert.Contains("chart-mark-closed", charts[1], StringComparison.Ordinal);
        Assert.DoesNotContain("chart-mark-", charts[2], StringComparison.Ordinal);
        Assert.Equal(4, html.Split("<desc").Length - 1);
        Assert.Contains("no: not all four feet measured", text, StringComparison.Ordinal);
        Assert.Contains("Earlier flags", text, StringComparison.Ordinal);
        Assert.Contains("Left fore, 8 % less; closed Thu 30 Apr: Lifted, nothing found", text, StringComparison.Ordinal);
        Assert.Contains("982000000001000", text, StringComparison.Ordinal);
        Assert.Contains("Call the veterinarian the same day", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_year_fits_on_a_page_of_a_quarter_megabyte()
    {
        await SampleFarm.FillAsync(_farm, days: 380, others: 0);
        var html = await _farm.PageAsync("/cows/417?days=365");
        Assert.True(Encoding.UTF8.GetByteCount(html) < 250_000, $"{Encoding.UTF8.GetByteCount(html)} bytes");
        // A point for two of 365 days.
        Assert.InRange(Points(html), 180, 184);
    }

    [Theory]
    [InlineData("days=180", 170, 180, "Each dot is a day’s mean")]
    [InlineData("days=365", 180, 184, "a mean for every two days")]
    [InlineData("days=all", 60, 62, "a mean for every week")]
    public async Task A_chart_says_for_how_long_a_point_stands(string span, int least, int most, string words)
    {
        await SampleFarm.FillAsync(_farm, days: 420, others: 0);
        var html = await _farm.PageAsync($"/cows/417?{span}");
        Assert.Contains(words, Html.Text(html), StringComparison.Ordinal);
        Assert.InRange(Points(html), least, most);
    }

    private static int Points(string html) => Html.Elements(html, "figure", "chart")[0].Split("data-readings=\"")[1].Split('"')[0].Split('|').Length;

    [Fact]
    public async Task A_passage_doubted_in_the_light_of_her_history_is_named_and_no_point_of_a_chart()
    {
        await _farm.RegisterAsync(Some.Cow("417", 417));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.ChangeAsync(state => state.WriteAssessmentsAsync(
            [
                new PassageAssessment
                {
                    PassageId = "parlour-exit.a", Cow = "417", At = Some.Now.AddHours(-1).AddSeconds(4), Baseline = BaselineState.Watching, Reasons = [QualityReason.WrongCowSuspected],
                },
            ]));
        var text = Html.Text(await _farm.PageAsync("/cows/417"));
        Assert.Contains("no: may be another cow", text, StringComparison.Ordinal);
        Assert.Contains("She has not crossed in this time.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cows_are_found_by_number_tag_and_pen()
    {
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("41", 90, pen: "5"), Some.Cow("B/7", 91, pen: "5"));
        Assert.Equal(["41", "417", "B/7"], Numbers(await _farm.PageAsync("/cows")));
        Assert.Equal(["41", "417"], Numbers(await _farm.PageAsync("/cows?q=4")));
        Assert.Equal(["41", "B/7"], Numbers(await _farm.PageAsync("/cows?q=pen+5")));
        Assert.Contains("No cow fits.", Html.Text(await _farm.PageAsync("/cows?q=zz")), StringComparison.Ordinal);
        using var one = await _farm.Http.GetAsync("/cows?q=b/7");
        Assert.Equal("/cows/B%2F7", one.Headers.Location?.ToString());
        Assert.Contains("Cow B/7", Html.Text(await _farm.PageAsync("/cows/B%2F7")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_long_herd_comes_in_parts()
    {
        await _farm.RegisterAsync([.. Enumerable.Range(1, 150).Select(i => Some.Cow($"{i}", i))]);
        var first = await _farm.PageAsync("/cows");
        Assert.Equal(100, Numbers(first).Count);
        Assert.Contains("/cows?q=&page=2", Html.Addresses(first));
        Assert.Equal(50, Numbers(await _farm.PageAsync("/cows?q=&page=2")).Count);
    }

    [Fact]
    public async Task Platforms_tell_their_state_and_what_could_not_be_used()
    {
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.TakeAsync(
            new RejectedInput("gaitwatch/home/parlour-exit/tag", "bad-json", "payload cannot be read as JSON.", "{<b>"u8.ToArray()),
            new StatusInput(Some.Platform, false, null, null));
        var text = Html.Text(await _farm.PageAsync("/platforms"));
        Assert.Contains("parlour-exit Offline", text, StringComparison.Ordinal);
        Assert.Contains("Last crossing Wed 10 Jun, 06:30", text, StringComparison.Ordinal);
        Assert.Contains("Tags read, 7 days 100 %", text, StringComparison.Ordinal);
        Assert.Contains("gaitwatch/home/parlour-exit/tag not readable payload cannot be read as JSON. The message as it came {<b>", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_was_entered_is_text_and_never_markup()
    {
        await _farm.RegisterAsync(Some.Cow("<b>1", 417, pen: "\"><script>"));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-1)));
        await _farm.RaiseAsync(Some.Alert("<b>1"));
        foreach (var route in (string[])["/", "/cows", "/cows/%3Cb%3E1"])
        {
            var html = await _farm.PageAsync(route);
            Assert.DoesNotContain("<b>", html, StringComparison.Ordinal);
            Assert.Single(html.Split("<script").Skip(1));
        }
    }

    [Fact]
    public async Task Pages_name_no_address_but_their_own_and_hold_nothing_inline()
    {
        await SampleFarm.FillAsync(_farm, days: 20, others: 3);
        foreach (var route in (string[])["/", "/visits/next", "/visits/2026-06-12", "/recovery", "/herd", "/cows", "/cows/417", "/cows/417?days=all", "/platforms"])
        {
            var html = await _farm.PageAsync(route);
            Assert.All(Html.Addresses(html), address => Assert.True(address.StartsWith('/') || address.StartsWith('#'), $"{route}: {address}"));
            Assert.DoesNotContain("style=", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<style", html, StringComparison.Ordinal);
            Assert.DoesNotContain(" onclick", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<!--", html, StringComparison.Ordinal);
            Assert.Contains("<html lang=\"en\">", html, StringComparison.Ordinal);
            Assert.Contains("Europe/Amsterdam", html, StringComparison.Ordinal);
            foreach (var address in Html.Leads(html).Distinct())
            {
                using var response = await _farm.Http.GetAsync(address);
                Assert.True(response.IsSuccessStatusCode, $"{route} leads to {address}: {(int)response.StatusCode}");
            }
        }
    }

    [Fact]
    public async Task Assets_are_kept_by_the_browser_until_they_change()
    {
        var html = await _farm.PageAsync("/");
        var style = Html.Addresses(html).Single(address => address.StartsWith("/assets/gaitwatch.css", StringComparison.Ordinal));
        using var first = await _farm.Http.GetAsync(style);
        Assert.Equal("text/css", first.Content.Headers.ContentType?.MediaType);
        Assert.Contains("immutable", first.Headers.CacheControl?.ToString(), StringComparison.Ordinal);
        using var again = new HttpRequestMessage(HttpMethod.Get, "/assets/gaitwatch.css") { Headers = { { "If-None-Match", first.Headers.ETag!.ToString() } } };
        using var unchanged = await _farm.Http.SendAsync(again);
        Assert.Equal(HttpStatusCode.NotModified, unchanged.StatusCode);
        using var none = await _farm.Http.GetAsync("/assets/nothing.css");
        Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
    }

    [Fact]
    public async Task A_page_that_is_not_there_is_said_in_a_page_to_people_and_in_a_problem_to_programs()
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, "/stalls") { Headers = { { "Accept", "text/html" } } };
        using var page = await _farm.Http.SendAsync(request);
        Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
        Assert.Contains("Nothing is at '/stalls'.", Html.Text(await page.Content.ReadAsStringAsync()), StringComparison.Ordinal);
        using var problem = await _farm.Http.GetAsync("/stalls");
        await Problems.AssertAsync(problem, HttpStatusCode.NotFound, "path", "path is '/stalls': there is no such route; /openapi/v1.json lists those that are.");
        using var cow = await _farm.Http.GetAsync("/cows/nobody");
        Assert.Equal(HttpStatusCode.NotFound, cow.StatusCode);
        Assert.Contains("No cow nobody", Html.Text(await cow.Content.ReadAsStringAsync()), StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> Numbers(string html) => [.. Html.Elements(html, "a", "row-link").Select(Html.Text)];
}
