using System.Net;

namespace GaitWatch.Web.Tests;

/// <summary>What the pages tell after a foot was treated: recovery, the cow's own page, the herd, the farm's own tasks.</summary>
public sealed class RecoveryPageTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await SampleFarm.FillAsync(_farm, days: 60, others: 2);
        using var found = await _farm.PostAsync("/api/cows/417/findings", new
        {
            id = "f1", at = Some.Now.AddDays(-4), foot = "rh", claw = "outer", zone = 4, lesion = "SU", severity = 2,
            actions = new[] { "trimmed", "wrap", "block" }, blockClaw = "inner", by = "Anna",
        });
        Assert.True(found.IsSuccessStatusCode, await found.Content.ReadAsStringAsync());
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_treated_foot_shows_status_figures_what_was_done_and_when_to_call_the_veterinarian()
    {
        var html = await _farm.PageAsync("/recovery");
        var text = Html.Text(html);
        Assert.Contains("1 foot open", text, StringComparison.Ordinal);
        Assert.Matches("417 Right hind (Too early to say|Worse|Stalled|Recovering) ", text);
        Assert.Contains("sole ulcer, outer claw, zone 4, moderate: trimmed, wrap on, block on inner claw", text, StringComparison.Ordinal);
        Assert.Contains("Treated Sat 6 Jun", text, StringComparison.Ordinal);
        Assert.Matches(@"Her normal: within \d\.\d %", text);
        Assert.Contains("Call the veterinarian the same day", text, StringComparison.Ordinal);
        // The curve's days are read by keys and pointer, and the block is drawn.
        Assert.Contains("data-readings=\"", html, StringComparison.Ordinal);
        Assert.Contains("chart-worn-block", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_cows_page_tells_what_happened_to_her_feet()
    {
        var text = Html.Text(await _farm.PageAsync("/cows/417"));
        Assert.Contains("Treated feet", text, StringComparison.Ordinal);
        Assert.Contains("Sat 6 Jun Right hind: sole ulcer, outer claw, zone 4, moderate", text, StringComparison.Ordinal);
        Assert.Contains("Right hind: flagged", text, StringComparison.Ordinal);
        var own = Html.Text(await _farm.PageAsync("/cows/417?from=2026-05-01&to=2026-05-10"));
        Assert.DoesNotContain("Sat 6 Jun Right hind: sole ulcer", own, StringComparison.Ordinal);
        Assert.Contains("30 Apr", Html.Text(await _farm.PageAsync("/cows/417?days=all")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_herds_page_counts_what_was_found_and_draws_no_verdict_from_little()
    {
        var text = Html.Text(await _farm.PageAsync("/herd"));
        Assert.Contains("June 2026 1 ", text, StringComparison.Ordinal);
        Assert.Contains("sole ulcer 1", text, StringComparison.Ordinal);
        Assert.Contains("too few to say", text, StringComparison.Ordinal);
        Assert.Contains("they do not prove", text, StringComparison.Ordinal);
        var german = Html.Text(await AskAsync("/herd?months=6", "de"));
        Assert.Contains("Sohlengeschwür", german, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_task_of_the_farm_is_ticked_in_one_tap()
    {
        var html = await _farm.PageAsync("/");
        Assert.Contains("Take the wrap off", Html.Text(html), StringComparison.Ordinal);
        var route = Html.Addresses(html).First(address => address.StartsWith("/follow-ups/", StringComparison.Ordinal));
        using var form = new FormUrlEncodedContent([new("by", " Jo ")]);
        using var done = await _farm.Http.PostAsync(route, form);
        Assert.Equal(HttpStatusCode.SeeOther, done.StatusCode);
        // Who did it is kept with it, and by the device for the next task.
        await using (var connection = new Microsoft.Data.Sqlite.SqliteConnection($"Data Source={_farm.DatabaseFile};Mode=ReadOnly"))
        {
            await connection.OpenAsync();
            await using var written = connection.CreateCommand();
            written.CommandText = "SELECT \"Body\" FROM writes ORDER BY \"Seq\" DESC LIMIT 1";
            Assert.Contains("\"Jo\"", (string?)await written.ExecuteScalarAsync(), StringComparison.Ordinal);
        }

        using (var next = new HttpRequestMessage(HttpMethod.Get, "/") { Headers = { { "Cookie", done.Headers.GetValues("Set-Cookie").Single(cookie => cookie.StartsWith("gaitwatch.by=", StringComparison.Ordinal)).Split(';')[0] } } })
        using (var kept = await _farm.Http.SendAsync(next))
        {
            var again = await kept.Content.ReadAsStringAsync();
            Assert.True(!again.Contains("name=\"by\"", StringComparison.Ordinal) || again.Contains("value=\"Jo\"", StringComparison.Ordinal));
        }

        var after = Html.Text(await _farm.PageAsync(done.Headers.Location!.ToString()));
        Assert.Contains("Cow 417, right hind: noted as done.", after, StringComparison.Ordinal);
        Assert.DoesNotContain("Take the wrap off", after, StringComparison.Ordinal);
        using var nothing = await _farm.Http.PostAsync("/follow-ups/nothing/done", null);
        Assert.Equal(HttpStatusCode.NotFound, nothing.StatusCode);
    }

    private async Task<string> AskAsync(string route, string language)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, route) { Headers = { { "Accept-Language", language } } };
        using var response = await _farm.Http.SendAsync(request);
        return await response.Content.ReadAsStringAsync();
    }
}
