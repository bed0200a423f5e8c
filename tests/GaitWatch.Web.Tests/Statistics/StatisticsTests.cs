using System.Net;
using System.Text.Json.Nodes;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

/// <summary>What the herd learns from its own flags, findings and treatments, entered over the API and asked for there.</summary>
public sealed class StatisticsTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("1", 1), Some.Cow("2", 2, pen: "3"), Some.Cow("3", 3), Some.Cow("4", 4), Some.Cow("5", 5));
        await _farm.PassAsync(Some.Passage("p", 1, Some.Now));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task The_hit_rate_tells_right_from_minor_other_leg_and_nothing_found_and_why_flags_were_dismissed()
    {
        var raised = Some.Now.AddDays(-3);
        var eye = Some.Alert("5", Leg.Lf, raised);
        await _farm.RaiseAsync(
            Some.Alert("1", Leg.Rh, raised), Some.Alert("2", Leg.Rh, raised), Some.Alert("3", Leg.Lh, raised, urgency: Urgency.NextVisit),
            Some.Alert("4", Leg.Rh, Some.Now.AddDays(-40)), eye);
        await FindAsync("1", "a", "2026-06-08T08:00:00Z", """ "foot":"rh","lesion":"SU","zone":4,"actions":["trimmed","block"],"blockClaw":"inner" """);
        await FindAsync("2", "b", "2026-06-08T08:10:00Z", """ "foot":"rh","lesion":"HHE","actions":["trimmed"] """);
        await FindAsync("3", "c", "2026-06-08T08:20:00Z", """ "foot":"lh","lesion":"none","actions":["trimmed"] """);
        await FindAsync("4", "d", "2026-05-03T08:20:00Z", """ "foot":"lh","lesion":"WLA","actions":["trimmed"] """);
        using (var closed = await _farm.PostAsync($"/api/alerts/{eye.Id}/close", new { reason = "seen-walking-sound", note = "walks well", by = "Jan", at = "2026-06-09T06:00:00Z" }))
            Assert.Equal(HttpStatusCode.OK, closed.StatusCode);

        var rate = await _farm.GetAsync("/api/statistics/hit-rate");
        Assert.Equal(("2025-07-01", "2026-06-11"), ((string?)rate["from"], (string?)rate["to"]));
        // Wilson for 1 of 4: 0.045587 to 0.699358 (scipy.stats.binomtest(1, 4).proportion_ci(method="wilson")).
        Assert.Equal(
            """{"raised":5,"lifted":4,"right":1,"minor":1,"otherLeg":1,"nothingFound":1,"hits":{"count":1,"of":4,"share":0.25,"interval":[0.045587,0.699358]},"isEnough":false}""",
            rate["overall"]!.ToJsonString());
        Assert.Equal(12, rate["byMonth"]!.AsArray().Count);
        Assert.Equal([("2026-05-01", 1), ("2026-06-01", 4)], rate["byMonth"]!.AsArray().Where(row => (int)row!["flags"]!["raised"]! > 0).Select(row => ((string?)row!["month"], (int)row["flags"]!["raised"]!)));
        Assert.Equal([("today", 4, 3), ("next-visit", 1, 1), ("watch", 0, 0)], rate["byUrgency"]!.AsArray().Select(row => ((string?)row!["urgency"], (int)row["flags"]!["raised"]!, (int)row["flags"]!["lifted"]!)));
        Assert.Equal("""[{"reason":"seen-walking-sound","count":1}]""", rate["dismissedBecause"]!.ToJsonString());
        var dismissed = Assert.Single(rate["dismissed"]!.AsArray())!;
        Assert.Equal(("5", "lf", "walks well", "Jan"), ((string?)dismissed["cow"], (string?)dismissed["leg"], (string?)dismissed["note"], (string?)dismissed["by"]));

        // Only what was raised in the time asked for.
        Assert.Equal(1, (int?)(await _farm.GetAsync("/api/statistics/hit-rate?from=2026-04-01&to=2026-06-01"))["overall"]!["raised"]);
    }

    [Fact]
    public async Task What_works_here_counts_each_lesion_and_treatment_and_says_nothing_of_few()
    {
        for (var i = 1; i <= 3; i++)
        {
            await FindAsync($"{i}", $"t{i}", "2026-04-20T08:00:00Z", """ "foot":"rh","lesion":"SU","locomotionScore":3,"actions":["trimmed","block","pain-relief"],"blockClaw":"inner","claw":"outer" """);
            await FindAsync($"{i}", $"j{i}", "2026-05-25T08:00:00Z", $""" "foot":"rh","lesion":"none","locomotionScore":{(i == 3 ? 3 : 1)} """);
        }

        await FindAsync("4", "t4", "2026-04-20T08:00:00Z", """ "foot":"rh","lesion":"DD","mStage":"M2","actions":["dressing","wrap"] """);
        var works = await _farm.GetAsync("/api/statistics/treatments");
        var rows = works["byLesion"]!.AsArray();
        Assert.Equal(
            [("DD", "dressing", 1, 0, 0), ("SU", "block+pain-relief", 3, 2, 3)],
            rows.Select(row => ((string?)row!["lesion"], (string?)row["treatment"], (int)row["treated"]!, (int)row["sound"]!["count"]!, (int)row["sound"]!["of"]!)));
        Assert.Equal("Sole ulcer, trim, block and pain relief: 2 of 3 feet sound at 35 days: too few to say.", (string?)rows[1]!["sentence"]);
        Assert.False((bool)rows[1]!["isEnough"]!);
        Assert.Equal(["trim", "block", "pain-relief", "block+pain-relief"], works["clawHorn"]!.AsArray().Select(row => (string)row!["treatment"]!));
        Assert.Equal(3, (int?)works["clawHorn"]![3]!["treated"]);
        Assert.Contains("do not prove", (string?)works["caution"], StringComparison.Ordinal);

        var months = (await _farm.GetAsync("/api/statistics/months")).AsArray();
        Assert.Equal(12, months.Count);
        var april = months.Single(month => (string?)month!["month"] == "2026-04-01")!;
        Assert.Equal((4, 2, 3), ((int)april["newCases"]!, (int)april["recovered"]!["count"]!, (int)april["recovered"]!["of"]!));
    }

    [Fact]
    public async Task Patterns_count_by_pen_leg_zone_and_month_and_name_a_cluster_where_to_look()
    {
        var herd = Enumerable.Range(0, 40).Select(i => Some.Cow($"9{i:00}", 900 + i, pen: i < 10 ? "7" : "8")).ToArray();
        await _farm.RegisterAsync(herd);
        for (var i = 0; i < 6; i++)
            await FindAsync($"9{i:00}", $"w{i}", $"2026-05-{10 + i}T08:00:00Z", """ "foot":"lh","lesion":"WLF","zone":3,"severity":2,"actions":["trimmed"] """);
        await FindAsync("920", "e", "2026-02-10T08:00:00Z", """ "foot":"rh","lesion":"WLF","zone":3,"severity":2,"actions":["trimmed"] """);
        await _farm.RaiseAsync(Some.Alert("900", Leg.Lh, Some.Now.AddDays(-30)));
        var patterns = await _farm.GetAsync("/api/statistics/patterns");
        Assert.Contains("""{"pen":"7","cows":10,"cases":6,"alerts":1}""", patterns["byPen"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Contains("""{"leg":"lh","cases":6,"alerts":1}""", patterns["byLeg"]!.ToJsonString(), StringComparison.Ordinal);
        Assert.Equal("""[{"zone":3,"cases":7}]""", patterns["byZone"]!.ToJsonString());
        Assert.Equal("""[{"lesion":"WLF","lesionInWords":"white line fissure","cases":7}]""", patterns["byLesion"]!.ToJsonString());
        Assert.Contains("""{"month":"2026-05-01","cases":6,"alerts":1}""", patterns["byMonth"]!.ToJsonString(), StringComparison.Ordinal);
        var cluster = Assert.Single(patterns["clusters"]!.AsArray())!;
        Assert.StartsWith("Six white line lesions from pen 7 in 6 days, expected less than 0.1: look at the walkway and the turns.", (string?)cluster["sentence"], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("from=2026-13-01", "from")]
    [InlineData("from=2026-06-02&to=2026-06-01", "to")]
    [InlineData("from=1900-01-01", "from")]
    [InlineData("from=0001-01-01", "from")]
    [InlineData("to=9999-12-31T23:59:59Z", "to")]
    [InlineData("to=0001-01-01", "to")]
    public async Task A_time_that_cannot_be_is_refused(string query, string field)
    {
        foreach (var what in (string[])["hit-rate", "treatments", "patterns", "months"])
        {
            using var answer = await _farm.Http.GetAsync($"/api/statistics/{what}?{query}");
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.NotNull(JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["errors"]![field]);
        }
    }

    [Fact]
    public async Task A_farm_without_anything_has_empty_statistics()
    {
        await using var host = new Empty();
        await host.Farm.InitializeAsync();
        Assert.Equal("""{"count":0,"of":0,"share":null,"interval":null}""", (await host.Farm.GetAsync("/api/statistics/hit-rate"))["overall"]!["hits"]!.ToJsonString());
        Assert.Empty((await host.Farm.GetAsync("/api/statistics/treatments"))["byLesion"]!.AsArray());
        Assert.Empty((await host.Farm.GetAsync("/api/statistics/patterns"))["clusters"]!.AsArray());
        Assert.Equal(12, (await host.Farm.GetAsync("/api/statistics/months")).AsArray().Count);
    }

    private async Task FindAsync(string cow, string id, string at, string rest)
    {
        using var answer = await _farm.Http.PostAsync(
            $"/api/cows/{cow}/findings", new StringContent($$"""{"id":"{{id}}","at":"{{at}}",{{rest}}}""", null, "application/json"));
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync());
    }

    private sealed class Empty : IAsyncDisposable
    {
        public FarmHost Farm { get; } = new();

        public async ValueTask DisposeAsync() => await Farm.DisposeAsync();
    }
}
