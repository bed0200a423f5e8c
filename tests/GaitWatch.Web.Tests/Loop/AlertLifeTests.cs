using System.Net;
using System.Text.Json.Nodes;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Web.Tests;

/// <summary>What lifting a foot says of a flag, what a look from afar leaves to be done, and who is missing.</summary>
public sealed class AlertLifeTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("418", 418), Some.Cow("419", 419), Some.Cow("420", 420) with { DriedOffOn = new DateOnly(2026, 6, 1) });
        await _farm.PassAsync(Some.Passage("p", 418, Some.Now));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Theory]
    [InlineData("""{"id":"f","foot":"rh","lesion":"WLA"}""", "right")]
    [InlineData("""{"id":"f","foot":"rh","lesion":"SH","severity":3}""", "right")]
    [InlineData("""{"id":"f","foot":"rh","lesion":"none","signs":["lame-nothing-in-foot"]}""", "right")]
    [InlineData("""{"id":"f","foot":"rh","lesion":"SH","severity":1}""", "minor")]
    [InlineData("""{"id":"f","foot":"lh","lesion":"SU"}""", "other-leg")]
    [InlineData("""{"id":"f","foot":"rh","lesion":"none"}""", "nothing-found")]
    public async Task A_finding_labels_the_alert(string finding, string label)
    {
        await _farm.RaiseAsync(Some.Alert("417", Leg.Rh, Some.Now.AddDays(-2)));
        Assert.Null((await AlertAsync())["label"]);
        var body = JsonNode.Parse(finding)!.AsObject();
        body["at"] = "2026-06-09T10:00:00.000Z";
        using (var answer = await _farm.PostAsync("/api/cows/417/findings", body))
            Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync());
        var alert = await AlertAsync();
        Assert.Equal((label, "2026-06-09T10:00:00.000Z"), ((string?)alert["label"], (string?)alert["liftedAt"]));
        // What was found since says nothing of how the flag stood the day before.
        Assert.Null(Assert.Single(await _farm.ListAsync("/api/flags?date=2026-06-08"))!["label"]);
    }

    [Fact]
    public async Task A_flag_for_today_that_was_closed_by_eye_asks_for_a_second_look_in_three_days()
    {
        var today = Some.Alert("417", Leg.Rh, Some.Now.AddDays(-1));
        var later = Some.Alert("418", Leg.Lh, Some.Now.AddDays(-1), urgency: Urgency.Watch);
        await _farm.RaiseAsync(today, later);
        foreach (var alert in (Alert[])[today, later])
        {
            using var closed = await _farm.PostAsync($"/api/alerts/{alert.Id}/close", new { reason = "seen-walking-sound", at = "2026-06-09T22:30:00Z" });
            Assert.Equal("closed", (string?)JsonNode.Parse(await closed.Content.ReadAsStringAsync())!["state"]);
        }

        // Half past midnight of the farm's 10 June: due on the 13th, and nothing before.
        Assert.Empty(await _farm.ListAsync("/api/follow-ups?date=2026-06-12"));
        var look = Assert.Single(await _farm.ListAsync("/api/follow-ups?date=2026-06-13"))!;
        Assert.Equal(("417", "rh", "recheck", "2026-06-13"), ((string?)look["cow"], (string?)look["foot"], (string?)look["what"], (string?)look["dueOn"]));
        Assert.Null((await AlertAsync())["label"]);
        // Lifting the foot is that look.
        using (var found = await _farm.PostAsync("/api/cows/417/findings", new { id = "f", at = "2026-06-10T05:00:00.000Z", foot = "rh", lesion = "none" }))
            Assert.Equal(HttpStatusCode.Created, found.StatusCode);
        Assert.Empty(await _farm.ListAsync("/api/follow-ups?date=2026-06-13"));
    }

    [Fact]
    public async Task Who_is_flagged_or_treated_and_stops_crossing_is_named_longest_missing_first()
    {
        await _farm.PassAsync(Some.Passage("q", 417, Some.Now.AddDays(-3)), Some.Passage("r", 419, Some.Now.AddDays(-5)), Some.Passage("s", 420, Some.Now.AddDays(-9)));
        Assert.Empty(await _farm.ListAsync("/api/not-seen"));
        await _farm.RaiseAsync(Some.Alert("417", Leg.Rh, Some.Now.AddDays(-4)), Some.Alert("418", Leg.Rh, Some.Now.AddDays(-4)), Some.Alert("420", Leg.Rh, Some.Now.AddDays(-10)));
        using (var found = await _farm.PostAsync("/api/cows/419/findings", new { id = "f", at = "2026-06-04T08:00:00.000Z", foot = "lh", lesion = "SU", actions = new[] { "trimmed" } }))
            Assert.Equal(HttpStatusCode.Created, found.StatusCode);
        var missing = await _farm.ListAsync("/api/not-seen");
        // 418 crossed this morning; 420 is dry and crosses no platform.
        Assert.Equal(["419", "417"], missing.Select(cow => (string)cow!["cow"]!));
        Assert.Equal("Not seen since 2026-06-05; treated on the left hind on 2026-06-04, not shown to be recovered: find her first.", (string?)missing[0]!["sentence"]);
        Assert.Equal(("alert", "rh"), ((string?)missing[1]!["because"], (string?)missing[1]!["leg"]));
        Assert.StartsWith("Not seen since 2026-06-07; flagged on the right hind", (string?)missing[1]!["sentence"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_input_that_cannot_be_folded_is_shown_with_its_reason_and_holds_up_no_other()
    {
        await using var farm = new RealFarm();
        await farm.Host.InitializeAsync();
        // A share too small for a double: its logarithm is none.
        await farm.Host.PassAsync(Some.Passage("good", 417, Some.Now.AddHours(-2)), Some.Passage("poison", 417, Some.Now.AddHours(-1), lf: double.Epsilon), Some.Passage("after", 417, Some.Now));
        var rejected = Assert.Single(await farm.Host.ListAsync("/api/ingest/rejected"))!;
        Assert.Equal(("parlour-exit.poison", "analysis-failed"), ((string?)rejected["topic"], (string?)rejected["reason"]));
        Assert.Contains("cannot be folded. It is left out", (string?)rejected["detail"], StringComparison.Ordinal);
        Assert.Equal(1, (int?)(await farm.Host.GetAsync("/api/ingest"))["rejected"]);
        Assert.Equal(0, (int?)(await farm.Host.GetAsync("/api/ingest"))["pending"]);
        Assert.Equal(3, (await farm.Host.ListAsync("/api/cows/982000000000417/passages")).Count);
    }

    private async Task<JsonNode> AlertAsync() => Assert.Single(await _farm.ListAsync("/api/alerts?cow=417"))!;

    private sealed class RealFarm : IAsyncDisposable
    {
        public FarmHost Host { get; } = new() { FoldWith = (store, stop) => RealFold.RunAsync(store, FarmHost.Zone, stop) };

        public async ValueTask DisposeAsync() => await Host.DisposeAsync();
    }
}
