using System.Net;
using System.Text.Json.Nodes;
using GaitWatch.Herd;
using GaitWatch.Simulator;
using GaitWatch.Store;

namespace GaitWatch.Web.Tests;

/// <summary>
/// From a cow that begins to spare a foot to the day on which she is shown to be sound again, through the real store, the real
/// analysis and the API; over the night of 29 March 2026, in which the farm's clocks go forward.
/// </summary>
public sealed class LoopTests
{
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");
    private static readonly DateTimeOffset Begin = At("2026-01-05T00:00:00Z");
    private static readonly DateTimeOffset FirstVisit = At("2026-03-20T09:30:00Z");
    private static readonly DateTimeOffset SecondVisit = At("2026-04-17T08:30:00Z");
    private static readonly DateTimeOffset End = At("2026-05-31T00:00:00Z");

    private static readonly string[] Views =
    [
        "/api/visits", "/api/findings", "/api/cows/{heals}/recovery", "/api/cows/{stalls}/recovery", "/api/follow-ups?date=2026-03-23",
        "/api/follow-ups?date=2026-03-26", "/api/follow-ups?date=2026-05-30", "/api/trim-list?visit=2026-03-20", "/api/trim-list?visit=2026-04-17",
        "/api/trim-list?visit=2026-06-12", "/api/alerts", "/api/flags", "/api/flags?date=2026-03-19",
    ];

    [Fact]
    public async Task A_lame_cow_is_found_listed_treated_followed_and_shown_to_be_sound_and_one_that_does_not_heal_comes_back()
    {
        var spec = HerdSpec.Plain(seed: 11, cows: 24, days: 146) with { Start = new DateOnly(2026, 1, 5) };
        var names = new SimulatedHerd(spec with { Days = 1 }).Cows;
        var (heals, stalls) = (names[4].Number, names[9].Number);
        var barn = new LameCows(
            spec,
            Episode(heals, Foot.Rh, 0.20, halfLifeDays: 4, remaining: 0),
            Episode(stalls, Foot.Lh, 0.22, halfLifeDays: 5, remaining: 0.75));

        await using var farm = await Farm.OpenAsync();
        await farm.UntilAsync(barn, Begin, At("2026-03-19T20:00:00Z"));

        // Both are flagged on the right leg, and for the visit that is planned they are on the list.
        foreach (var (cow, leg) in ((string, string)[])[(heals, "rh"), (stalls, "lh")])
            Assert.Contains(await farm.ListAsync("/api/flags"), flag => (string?)flag!["cow"] == cow && (string?)flag["leg"] == leg);
        await farm.WriteAsync(HttpMethod.Put, "/api/visits/2026-03-20", """{"trimmer":"Anna","places":10,"at":"2026-03-19T19:00:00Z"}""", HttpStatusCode.Created);
        var rows = await farm.ListAsync("/api/trim-list");
        Assert.Equal("rh", (string?)RowOf(rows, heals)["leg"]);
        Assert.Equal("alert", (string?)RowOf(rows, heals)["reason"]);
        Assert.Equal("alert", (string?)RowOf(rows, stalls)["reason"]);
        Assert.Equal("Lift both hind feet.", (string?)RowOf(rows, heals)["note"]);
        Assert.Contains(await farm.ListAsync($"/api/alerts?cow={heals}"), alert => (string?)alert!["state"] == "listed");

        // At the chute.
        await farm.UntilAsync(barn, At("2026-03-19T20:00:00Z"), FirstVisit);
        await farm.WriteAsync(
            HttpMethod.Post, $"/api/cows/{heals}/findings",
            """{"id":"f-heals","at":"2026-03-20T09:30:00Z","foot":"rh","claw":"outer","zone":4,"lesion":"SU","severity":2,"actions":["trimmed","dressing","wrap","block"],"blockClaw":"inner","by":"Anna"}""",
            HttpStatusCode.Created);
        await farm.WriteAsync(
            HttpMethod.Post, $"/api/cows/{stalls}/findings",
            """{"id":"f-stalls","at":"2026-03-20T09:45:00Z","foot":"lh","claw":"outer","zone":3,"lesion":"WLF","severity":2,"actions":["trimmed"],"by":"Anna"}""",
            HttpStatusCode.Created);
        await farm.WriteAsync(HttpMethod.Put, "/api/visits/2026-04-17", """{"trimmer":"Anna","at":"2026-03-20T12:00:00Z"}""", HttpStatusCode.Created);
        foreach (var cow in (string[])[heals, stalls])
            Assert.Contains(await farm.ListAsync($"/api/alerts?cow={cow}"), alert => (string?)alert!["state"] is "examined" or "closed");

        // The farm takes the wrap off after three days and looks at the block in its time.
        await farm.UntilAsync(barn, FirstVisit, At("2026-03-23T08:00:00Z"));
        var wrap = TaskOf(await farm.ListAsync("/api/follow-ups"), heals, "wrap-off");
        Assert.Equal(("2026-03-23", "2026-03-25"), ((string?)wrap["dueOn"], (string?)wrap["overdueOn"]));
        await farm.WriteAsync(HttpMethod.Post, $"/api/follow-ups/{wrap["id"]}/done", """{"at":"2026-03-23T08:00:00Z","by":"Jan"}""", HttpStatusCode.OK);
        Assert.DoesNotContain(await farm.ListAsync("/api/follow-ups"), task => (string?)task!["what"] == "wrap-off");
        await farm.UntilAsync(barn, At("2026-03-23T08:00:00Z"), At("2026-03-26T08:00:00Z"));
        // Due before the clocks go forward, overdue after: the farm's days, not spans of hours.
        var check = TaskOf(await farm.ListAsync("/api/follow-ups"), heals, "block-check");
        Assert.Equal(("2026-03-25", "2026-03-31"), ((string?)check["dueOn"], (string?)check["overdueOn"]));
        await farm.WriteAsync(
            HttpMethod.Post, $"/api/cows/{heals}/findings",
            """{"id":"f-check","at":"2026-03-26T08:00:00Z","foot":"rh","lesion":"SU","claw":"outer","actions":[],"note":"The block holds.","by":"Jan"}""", HttpStatusCode.Created);
        Assert.DoesNotContain(await farm.ListAsync("/api/follow-ups"), task => (string?)task!["cow"] == heals);

        // Before the second visit: her block is to come off; the other has not healed and is back on the list.
        await farm.UntilAsync(barn, At("2026-03-26T08:00:00Z"), At("2026-04-16T20:00:00Z"));
        Assert.NotEqual("recovered", await farm.StatusAsync(heals));
        Assert.Contains(await farm.StatusAsync(stalls), new[] { "stalled", "worse" });
        rows = await farm.ListAsync("/api/trim-list");
        Assert.Equal("block-off", (string?)RowOf(rows, heals)["reason"]);
        Assert.Equal("2026-03-20", (string?)RowOf(rows, heals)["blockOn"]);
        Assert.Equal("not-recovering", (string?)RowOf(rows, stalls)["reason"]);
        Assert.Equal("lh", (string?)RowOf(rows, stalls)["leg"]);
        Assert.StartsWith("2026-03-20: white line fissure", (string?)RowOf(rows, stalls)["lastFinding"], StringComparison.Ordinal);
        await farm.UntilAsync(barn, At("2026-04-16T20:00:00Z"), SecondVisit);
        await farm.WriteAsync(
            HttpMethod.Post, $"/api/cows/{heals}/findings",
            """{"id":"f-off","at":"2026-04-17T08:30:00Z","foot":"rh","claw":"outer","lesion":"SU","severity":1,"actions":["block-off"],"by":"Anna"}""", HttpStatusCode.Created);
        await farm.WriteAsync(HttpMethod.Put, "/api/visits/2026-06-12", """{"trimmer":"Anna","at":"2026-04-17T12:00:00Z"}""", HttpStatusCode.Created);

        // Weeks later she is shown to carry her normal again; nothing more is asked of that foot.
        await farm.UntilAsync(barn, SecondVisit, End);
        Assert.Equal("recovered", await farm.StatusAsync(heals));
        Assert.DoesNotContain(await farm.ListAsync("/api/trim-list"), row => (string?)row!["cow"] == heals && (string?)row["reason"] != "routine");
        Assert.Contains(await farm.StatusAsync(stalls), new[] { "stalled", "worse" });
        var recovery = Assert.Single(await farm.ListAsync($"/api/cows/{heals}/recovery"))!;
        Assert.Equal(["block", "wrap", "wrap-off", "block-off"], recovery["marks"]!.AsArray().Select(mark => (string)mark!["what"]!));
        Assert.InRange((double)recovery["dropPercentAtTreatment"]!, 15, 25);
        var still = Assert.Single(await farm.ListAsync($"/api/cows/{stalls}/recovery"))!;
        Assert.InRange((double)still["dropPercentNow"]!, 12, 21);
        Assert.True(DateOnly.Parse((string)recovery["recoveredOn"]!) > new DateOnly(2026, 4, 20), $"{recovery["recoveredOn"]}: not while the block was on or had just come off.");

        // The same inputs, in any order and some of them twice, give the same views.
        await using var again = await Farm.OpenAsync();
        await again.ShuffledAsync([.. barn.Between(Begin, End).Concat(await farm.WritesAsync()).Distinct()], new Random(7));
        foreach (var view in Views.Select(view => view.Replace("{heals}", heals, StringComparison.Ordinal).Replace("{stalls}", stalls, StringComparison.Ordinal)))
            Assert.Equal(Unrevised(await farm.ListAsync(view)), Unrevised(await again.ListAsync(view)));
    }

    private static LamenessEpisode Episode(string cow, Foot foot, double drop, double halfLifeDays, double remaining) => new()
    {
        Cow = cow,
        Foot = foot,
        OnsetAt = At("2026-03-09T00:00:00Z"),
        RampDays = 5,
        PlateauDrop = drop,
        Lesion = "SU",
        Healing = [new HealingStart(FirstVisit, halfLifeDays, remaining, IsTreatment: true)],
    };

    private static JsonNode RowOf(JsonArray rows, string cow) => rows.Single(row => (string?)row!["cow"] == cow)!;

    private static JsonNode TaskOf(JsonArray tasks, string cow, string what) => tasks.Single(task => (string?)task!["cow"] == cow && (string?)task["what"] == what)!;

    // When something was revised tells of arrival.
    private static string Unrevised(JsonArray list)
    {
        foreach (var item in list)
            (item as JsonObject)?.Remove("revisedAt");
        return list.ToJsonString();
    }

    private static DateTimeOffset At(string text) => DateTimeOffset.Parse(text);

    /// <summary>A farm in Berlin's zone with the real analysis.</summary>
    private sealed class Farm : IAsyncDisposable
    {
        private readonly FarmHost _host = new()
        {
            FarmZone = Berlin,
            FoldWith = (store, stop) => RealFold.RunAsync(store, Berlin, stop),
            Options = new WebOptions { WriteWait = TimeSpan.FromMinutes(5) },
        };

        public static async Task<Farm> OpenAsync()
        {
            var farm = new Farm();
            await farm._host.InitializeAsync();
            return farm;
        }

        public Task<JsonArray> ListAsync(string route) => _host.ListAsync(route);

        public async Task<string> StatusAsync(string cow) => (string)Assert.Single(await ListAsync($"/api/cows/{cow}/recovery"))!["status"]!;

        public async Task UntilAsync(LameCows barn, DateTimeOffset from, DateTimeOffset to)
        {
            _host.Clock.Now = to;
            foreach (var part in barn.Between(from, to).Chunk(2000))
                await _host.TakeAsync(part);
        }

        public async Task ShuffledAsync(Input[] inputs, Random random)
        {
            _host.Clock.Now = End;
            var doubled = inputs.Concat(inputs.Where(_ => random.Next(5) == 0)).ToArray();
            random.Shuffle(doubled);
            foreach (var part in doubled.Chunk(1500))
                await _host.TakeAsync(part);
        }

        public async Task WriteAsync(HttpMethod method, string route, string body, HttpStatusCode expected)
        {
            using var request = new HttpRequestMessage(method, route) { Content = new StringContent(body, null, "application/json") };
            using var response = await _host.Http.SendAsync(request);
            Assert.True(response.StatusCode == expected, $"{route}: {(int)response.StatusCode} {await response.Content.ReadAsStringAsync()}");
        }

        public async Task<IEnumerable<Input>> WritesAsync()
        {
            await using var state = await _host.Store.BeginAsync();
            return [.. (await state.WritesUntilAsync(long.MaxValue)).Where(write => write is not RegisterWrite).Select(write => new WriteInput(write))];
        }

        public async ValueTask DisposeAsync() => await _host.DisposeAsync();
    }
}
