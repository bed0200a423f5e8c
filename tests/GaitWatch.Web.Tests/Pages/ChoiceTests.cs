using System.Net;

namespace GaitWatch.Web.Tests;

/// <summary>Language and unit of weights, as a reader chooses them.</summary>
public sealed class ChoiceTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await SampleFarm.FillAsync(_farm, days: 20, others: 1);
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task A_browser_that_asks_for_German_gets_German_words_figures_and_dates()
    {
        var html = await AskAsync("/cows/417", ("Accept-Language", "de-AT,de;q=0.9,en;q=0.5"));
        var text = Html.Text(html);
        Assert.Contains("<html lang=\"de\">", html, StringComparison.Ordinal);
        Assert.Contains("Hinten rechts", text, StringComparison.Ordinal);
        Assert.Contains("22 % weniger Last", text, StringComparison.Ordinal);
        Assert.Contains("Am selben Tag den Tierarzt rufen", text, StringComparison.Ordinal);
        Assert.Matches(@"\d{2},\d %", text);
        Assert.Contains("Mi 10. Juni", Html.Text(await AskAsync("/", ("Accept-Language", "de"))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_language_that_there_is_not_gets_English()
    {
        Assert.Contains("<html lang=\"en\">", await AskAsync("/", ("Accept-Language", "fi")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_switch_outweighs_the_browser_and_leads_back()
    {
        using var chosen = await ChooseAsync(("language", "de"), ("back", "/cows/417?days=14"));
        Assert.Equal(HttpStatusCode.SeeOther, chosen.StatusCode);
        Assert.Equal("/cows/417?days=14", chosen.Headers.Location?.ToString());
        var cookie = chosen.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        var html = await AskAsync("/cows/417?days=14", ("Accept-Language", "en"), ("Cookie", cookie));
        Assert.Contains("<html lang=\"de\">", html, StringComparison.Ordinal);
        Assert.Contains("value=\"/cows/417?days=14\"", html, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Weights_are_shown_in_pounds_to_who_chose_them_and_the_api_keeps_to_kilograms()
    {
        var inKg = WeightOf(await AskAsync("/cows/417"), "kg");
        using var chosen = await ChooseAsync(("weights", "lb"), ("back", "/"));
        var cookie = chosen.Headers.GetValues("Set-Cookie").Single().Split(';')[0];
        var inLb = WeightOf(await AskAsync("/cows/417", ("Cookie", cookie)), "lb");
        // 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959); both are shown rounded to whole units.
        Assert.InRange(inLb, (inKg - 0.5) / 0.45359237 - 0.5, (inKg + 0.5) / 0.45359237 + 0.5);
        using var api = new HttpRequestMessage(HttpMethod.Get, "/api/cows/417/passages") { Headers = { { "Cookie", cookie }, { "Accept-Language", "de" } } };
        using var answer = await _farm.Http.SendAsync(api);
        Assert.Equal((await _farm.GetAsync("/api/cows/417/passages")).ToJsonString(), System.Text.Json.Nodes.JsonNode.Parse(await answer.Content.ReadAsStringAsync())!.ToJsonString());
    }

    [Theory]
    [InlineData("//evil.example/")]
    [InlineData("https://evil.example/")]
    [InlineData("/\\evil.example")]
    public async Task The_switch_never_leads_elsewhere(string back)
    {
        using var chosen = await ChooseAsync(("language", "xx"), ("back", back));
        Assert.Equal("/", chosen.Headers.Location?.ToString());
        Assert.False(chosen.Headers.Contains("Set-Cookie"));
    }

    private static double WeightOf(string html, string unit) =>
        double.Parse(System.Text.RegularExpressions.Regex.Match(Html.Text(html), $@"(\d+) {unit}\b").Groups[1].Value);

    private async Task<string> AskAsync(string route, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, route);
        foreach (var (name, value) in headers)
            request.Headers.TryAddWithoutValidation(name, value);
        using var response = await _farm.Http.SendAsync(request);
        return await response.Content.ReadAsStringAsync();
    }

    private Task<HttpResponseMessage> ChooseAsync(params (string Name, string Value)[] fields) =>
        _farm.Http.PostAsync("/choices", new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value))));
}
