using System.Net;
using System.Text.RegularExpressions;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>Every page in German, with all that a farm can show on it: no English is left for the reader.</summary>
public sealed partial class GermanTests : IAsyncLifetime
{
    // Short words that stand in every English sentence and in no German one; parts of names are no words of their own.
    private static readonly string[] s_english = ["the", "is", "are", "not", "of", "and", "with", "by", "to", "her", "for", "no", "has", "that", "this", "cow", "foot", "leg"];

    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await SampleFarm.FillAsync(_farm, days: 40, others: 4);
        _farm.Http.DefaultRequestHeaders.AcceptLanguage.ParseAdd("de");
        _farm.Http.DefaultRequestHeaders.Accept.ParseAdd("text/html");
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task No_English_is_left_on_any_page()
    {
        await PutAsync("/api/visits/2026-06-12", new { trimmer = "Anna", places = 3 });
        await PutAsync("/api/visits/2026-06-12/cows/500", new { hand = "pinned", foot = "rh", reason = "hinkt" });
        foreach (var (cow, finding) in Findings)
        {
            using var taken = await _farm.PostAsync($"/api/cows/{cow}/findings", finding);
            Assert.Equal(HttpStatusCode.Created, taken.StatusCode);
        }

        // A platform that is away, a reader that reads little, a check that found it wrong, a message nobody can read.
        await _farm.TakeAsync(new StatusInput(Some.Platform, false, Some.Now, null), new RejectedInput("gaitwatch/home/parlour-exit/tag", "bad-tag", "eid is '12': 15 digits by ISO 11784 in quotes.", [1]));
        await _farm.PassAsync([.. Enumerable.Range(0, 60).Select(i => Some.Passage($"nobody{i}", null, Some.Now.AddHours(-3).AddMinutes(i)))]);

        var pages = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var route in (string[])["/", "/cows", "/cows/417", "/cows/417?days=365", "/cows/500", "/visits/next", "/visits/2026-06-12", "/visits/next/share", "/visits/next/chute", "/recovery", "/herd", "/platforms", "/passages/parlour-exit.417-3"])
            pages[route] = await ReadAsync(() => _farm.Http.GetAsync(route));
        Assert.Contains("Die Waage ist nicht verbunden", pages["/"], StringComparison.Ordinal);
        Assert.Contains("hatten eine Ohrmarke", pages["/platforms"], StringComparison.Ordinal);
        Assert.Contains("keine gültige Ohrmarke", pages["/platforms"], StringComparison.Ordinal);

        // What is not there, and what is not taken.
        pages["no page"] = await ReadAsync(() => _farm.Http.GetAsync("/nirgends"), HttpStatusCode.NotFound);
        pages["no cow"] = await ReadAsync(() => _farm.Http.GetAsync("/cows/9999"), HttpStatusCode.NotFound);
        pages["no link"] = await ReadAsync(() => _farm.Http.GetAsync("/share/nichts"), HttpStatusCode.NotFound);
        pages["no flag"] = await PostAsync("/alerts/keine/close", new() { ["reason"] = "other" }, HttpStatusCode.NotFound);
        var flag = Uri.EscapeDataString((string)(await _farm.ListAsync("/api/flags"))[0]!["id"]!);
        pages["no reason"] = await PostAsync($"/alerts/{flag}/close", new() { ["reason"] = "because" }, HttpStatusCode.BadRequest);
        pages["no task"] = await PostAsync("/follow-ups/keine/done", [], HttpStatusCode.NotFound);
        pages["no visit"] = await PostAsync("/visits/2026-06-20/cows/417/done", [], HttpStatusCode.NotFound);
        pages["nothing to cancel"] = await PostAsync("/visits/2026-06-20/cancel", [], HttpStatusCode.NotFound);
        pages["unknown cow"] = await PostAsync("/visits/2026-06-12/cows/9999/done", [], HttpStatusCode.NotFound);
        pages["before herself"] = await PostAsync("/visits/2026-06-12/cows/417/place", new() { ["before"] = "417" }, HttpStatusCode.BadRequest);
        pages["before nobody"] = await PostAsync("/visits/2026-06-12/cows/417/place", new() { ["before"] = "9999" }, HttpStatusCode.BadRequest);
        pages["no words why"] = await PostAsync("/visits/2026-06-12/pinned", new() { ["cow"] = "417", ["reason"] = "" }, HttpStatusCode.BadRequest);

        var left = pages.SelectMany(page => English(page.Value).Select(found => $"{page.Key}: {found}")).Distinct().ToArray();
        Assert.True(left.Length == 0, string.Join("\n", left));
    }

    // What was done and is to be done again: each of the farm's rules says something of one of these.
    private static IEnumerable<(string Cow, object Finding)> Findings =>
    [
        ("87", new { id = "g1", at = "2026-05-20T08:00:00Z", foot = "lh", claw = "outer", zone = 4, lesion = "SU", severity = 3, signs = new[] { "both-claws-sore" }, actions = new[] { "trimmed", "block", "wrap", "pain-relief" }, blockClaw = "outer" }),
        ("500", new { id = "g2", at = "2026-05-28T08:00:00Z", foot = "rh", lesion = "DD", mStage = "M2", actions = new[] { "trimmed" } }),
        ("501", new { id = "g3", at = "2026-06-05T08:00:00Z", foot = "lf", claw = "outer", zone = 3, lesion = "WLA", severity = 2, actions = new[] { "trimmed", "loose-horn-removed", "wrap" } }),
        ("62", new { id = "g4", at = "2026-06-02T08:00:00Z", foot = "lh", claw = "inner", lesion = "foreign-body", foreignBody = new { kind = "stone", sizeMillimetres = 6 }, actions = new[] { "foreign-body-removed" } }),
    ];

    private static IEnumerable<string> English(string html)
    {
        // What the browser shows, without what is said to be in another language, names of things, and scripts' own data.
        var text = WebUtility.HtmlDecode(Tag().Replace(Foreign().Replace(html, " "), " | "));
        foreach (Match sentence in Sentence().Matches(text))
        {
            var words = Word().Matches(sentence.Value).Select(word => word.Value.ToLowerInvariant()).ToArray();
            if (words.Intersect(s_english).Any())
                yield return sentence.Value.Trim();
        }
    }

    private async Task PutAsync(string route, object body)
    {
        using var taken = await _farm.PutAsync(route, body);
        Assert.True(taken.IsSuccessStatusCode, await taken.Content.ReadAsStringAsync());
    }

    private Task<string> PostAsync(string route, Dictionary<string, string> form, HttpStatusCode status) => ReadAsync(() => _farm.Http.PostAsync(route, new FormUrlEncodedContent(form)), status);

    private static async Task<string> ReadAsync(Func<Task<HttpResponseMessage>> ask, HttpStatusCode status = HttpStatusCode.OK)
    {
        using var answer = await ask();
        var html = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.StatusCode == status, $"{(int)answer.StatusCode} instead of {(int)status}: {html}");
        Assert.Contains("lang=\"de\"", html, StringComparison.Ordinal);
        return WebUtility.HtmlDecode(html);
    }

    [GeneratedRegex("<(script|style|code|pre)\\b.*?</\\1>|<(\\w+)[^>]*\\slang=\"en\"[^>]*>.*?</\\2>", RegexOptions.Singleline)]
    private static partial Regex Foreign();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();

    [GeneratedRegex(@"[^|\n.:;!?]+")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"(?<![\p{L}\d/_-])\p{L}+(?![\p{L}\d/_-])")]
    private static partial Regex Word();
}
