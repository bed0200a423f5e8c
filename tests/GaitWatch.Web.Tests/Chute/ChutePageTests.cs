using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using GaitWatch.Herd;

namespace GaitWatch.Web.Tests;

public sealed partial class ChutePageTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("418", 418));
        await _farm.RaiseAsync(Some.Alert("417"));
        using var visit = await _farm.PutAsync("/api/visits/2026-06-12", new { trimmer = "Anna", places = 20 });
        Assert.Equal(HttpStatusCode.Created, visit.StatusCode);
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Lesions_stand_in_words_and_no_code_is_read()
    {
        var page = await _farm.PageAsync("/visits/next/chute");
        var text = Html.Text(Words().Replace(page, ""));
        Assert.All(LesionOffers.All, offer => Assert.Contains(ChuteTexts.Lesion(offer.Lesion), text, StringComparison.Ordinal));
        foreach (var code in Enum.GetValues<Lesion>().Select(lesion => lesion.WireName()).Where(code => code.All(char.IsUpper)))
            Assert.DoesNotMatch($@"\b{code}\b", text);
        // What can hurt is said where the work is described.
        Assert.Contains("Secure the cow and the foot first.", text, StringComparison.Ordinal);
        Assert.Contains("Foot-and-mouth disease must be reported.", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everything_the_page_brings_along_is_kept_by_the_worker_and_is_there()
    {
        var page = await _farm.PageAsync("/visits/next/chute");
        using var answer = await _farm.Http.GetAsync("/visits/next/chute/worker.js");
        Assert.Equal("/visits/next/chute", answer.Headers.GetValues("Service-Worker-Allowed").Single());
        var worker = await answer.Content.ReadAsStringAsync();
        var told = JsonNode.Parse(Told().Match(worker).Groups[1].Value)!;
        var files = told["files"]!.AsArray().Select(file => (string)file!).ToArray();
        Assert.All(Html.Addresses(page).Where(address => address.StartsWith("/assets/", StringComparison.Ordinal)), address => Assert.Contains(address, files));
        foreach (var file in files)
        {
            using var one = await _farm.Http.GetAsync(file);
            Assert.True(one.IsSuccessStatusCode, file);
        }

        var manifest = await _farm.GetAsync("/visits/next/chute/app.webmanifest");
        Assert.Equal("/visits/next/chute", (string?)manifest["start_url"]);
        Assert.All(manifest["icons"]!.AsArray(), icon => Assert.Contains((string)icon!["src"]!, files));
    }

    [Fact]
    public async Task Another_language_or_version_is_another_worker()
    {
        Assert.NotEqual(ChuteApp.OfFarm("next").Version, ChuteApp.OfFarm("2026-06-12").Version);
        var before = System.Globalization.CultureInfo.CurrentUICulture;
        try
        {
            var english = ChuteApp.OfFarm("next").Version;
            System.Globalization.CultureInfo.CurrentUICulture = new System.Globalization.CultureInfo("de");
            Assert.NotEqual(english, ChuteApp.OfFarm("next").Version);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentUICulture = before;
        }

        using var none = await _farm.Http.GetAsync("/visits/tomorrow/chute/worker.js");
        await Problems.AssertAsync(none, HttpStatusCode.NotFound, "visit", "visit is 'tomorrow' in the route: 'next', or a date such as 2026-03-02.");
    }

    [Fact]
    public async Task The_data_hold_the_list_the_register_and_what_was_found_before()
    {
        using var earlier = await _farm.PostAsync("/api/cows/418/findings", new { id = "f0", at = "2026-06-01T08:00:00Z", foot = "lh", claw = "outer", zone = 4, lesion = "SU", actions = new[] { "trimmed", "block" }, blockClaw = "inner" });
        Assert.Equal(HttpStatusCode.Created, earlier.StatusCode);
        var data = await _farm.GetAsync("/visits/next/chute/data");
        Assert.Equal("2026-06-12", (string?)data["date"]);
        Assert.Equal("Anna", (string?)data["visit"]!["trimmer"]);
        Assert.Equal("Europe/Amsterdam", (string?)data["zone"]);
        Assert.Contains(data["rows"]!.AsArray(), row => (string?)row!["cow"] == "417" && (string?)row["leg"] == "rh");
        var cow = data["cows"]!.AsArray().Single(c => (string?)c!["cow"] == "418")!;
        Assert.Equal("982000000000418", (string?)cow["eid"]);
        Assert.Equal("""[{"foot":"lh","claw":"inner","since":"2026-06-01"}]""", cow["worn"]!.ToJsonString());
        Assert.Equal("lh", (string?)cow["found"]![0]!["foot"]);
        // Days until a block is looked at: Thomas H.J. et al. 2015, J Dairy Sci 98:4477-4486.
        Assert.Equal("""{"fromDay":5,"toDay":11}""", data["followUps"]!["blockCheck"]!.ToJsonString());
    }

    [GeneratedRegex("<script type=\"application/json\".*?</script>", RegexOptions.Singleline)]
    private static partial Regex Words();

    [GeneratedRegex(@"^const app = (\{.*\});", RegexOptions.Multiline)]
    private static partial Regex Told();
}
