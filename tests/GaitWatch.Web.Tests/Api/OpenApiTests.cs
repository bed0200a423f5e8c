using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

public sealed class OpenApiTests : IAsyncLifetime
{
    // Section 4 of the wire contract, and what is ours beyond it.
    private static readonly string[] Routes =
    [
        "get /api/flags", "get /api/alerts", "get /api/alerts/{id}", "post /api/alerts/{id}/close", "get /api/cows", "get /api/cows/{cow}",
        "put /api/cows/{cow}", "post /api/herd", "get /api/cows/{cow}/passages", "get /api/passages", "get /api/passages/{id}/curves",
        "get /api/cows/{cow}/recovery", "get /api/visits", "get /api/trim-list", "get /api/findings", "get /api/follow-ups", "get /api/platforms",
        "get /api/ingest", "get /api/ingest/rejected", "get /healthz", "get /readyz", "get /metrics", "post /api/inputs",
        "put /api/visits/{date}", "delete /api/visits/{date}", "post /api/cows/{cow}/findings", "put /api/findings/{id}", "delete /api/findings/{id}", "get /api/visits/{date}/share", "post /api/follow-ups/{id}/done",
        "get /api/platforms/{id}/reading", "get /api/platforms/{id}/calibrations", "post /api/platforms/{id}/calibrations",
        "get /api/statistics/hit-rate", "get /api/statistics/treatments", "get /api/statistics/patterns", "get /api/statistics/months",
        "get /api/not-seen", "get /api/export/findings", "get /api/export/alerts",
        "put /api/visits/{date}/cows/{cow}", "delete /api/visits/{date}/cows/{cow}", "get /api/alerts/{id}/evidence",
        "get /api/series", "get /api/series/refused", "post /api/series/backfill",
        "put /api/visits/{date}/cows/{cow}/done", "delete /api/visits/{date}/cows/{cow}/done", "put /api/visits/{date}/cows/{cow}/place",
    ];

    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task The_document_lists_every_route_and_nothing_else()
    {
        var document = await _farm.GetAsync("/openapi/v1.json");
        Assert.StartsWith("3.", (string?)document["openapi"], StringComparison.Ordinal);
        Assert.Equal(Routes.Order(StringComparer.Ordinal), Operations(document).Select(o => o.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_route_says_what_it_is_for_what_it_takes_and_what_it_answers()
    {
        var document = await _farm.GetAsync("/openapi/v1.json");
        foreach (var (name, operation) in Operations(document))
        {
            Assert.False(string.IsNullOrWhiteSpace((string?)operation["summary"]), $"{name} has no summary.");
            foreach (var parameter in operation["parameters"]?.AsArray() ?? [])
            {
                Assert.False(string.IsNullOrWhiteSpace((string?)parameter!["description"]), $"{name}: {parameter["name"]} has no description.");
                Assert.True(parameter["schema"]?["type"] is not null, $"{name}: {parameter["name"]} has no type.");
            }

            foreach (var (status, answer) in operation["responses"]!.AsObject())
            {
                if (status is "308")
                    continue;
                Assert.True(answer!["content"] is JsonObject { Count: > 0 }, $"{name}: answer {status} has no content.");
                foreach (var (type, media) in answer["content"]!.AsObject())
                    Assert.True(type is "text/plain" or "text/csv" || media!["schema"] is JsonObject { Count: > 0 }, $"{name}: answer {status} {type} has no schema.");
            }

            if (name.StartsWith('p'))
                Assert.True(operation["requestBody"]?["content"] is JsonObject { Count: > 0 }, $"{name} takes a body that is not described.");
        }
    }

    [Fact]
    public async Task Parameters_are_named_as_in_the_contract()
    {
        var operations = Operations(await _farm.GetAsync("/openapi/v1.json")).ToDictionary(o => o.Name, o => o.Operation);
        Assert.Equal(["date", "page", "pageSize"], Parameters("get /api/flags"));
        Assert.Equal(["cow", "from", "page", "pageSize", "state", "to"], Parameters("get /api/alerts"));
        Assert.Equal(["cow", "from", "page", "pageSize", "to"], Parameters("get /api/cows/{cow}/passages"));
        Assert.Equal(["from", "page", "pageSize", "platform", "quality", "to"], Parameters("get /api/passages"));
        Assert.Equal(["page", "pageSize", "visit"], Parameters("get /api/trim-list"));
        Assert.Equal(["at", "partial"], Parameters("post /api/herd"));
        Assert.Equal(["cow", "from", "page", "pageSize", "to"], Parameters("get /api/findings"));
        Assert.Equal(["date", "page", "pageSize"], Parameters("get /api/follow-ups"));
        Assert.Equal(["date"], Parameters("put /api/visits/{date}"));
        return;

        IEnumerable<string> Parameters(string route) => operations[route]["parameters"]!.AsArray().Select(p => (string)p!["name"]!).Order(StringComparer.Ordinal);
    }

    [Fact]
    public async Task Shapes_say_their_types()
    {
        var schemas = (await _farm.GetAsync("/openapi/v1.json"))["components"]!["schemas"]!;
        var alert = schemas["AlertView"]!["properties"]!;
        Assert.Equal("string", (string?)alert["id"]!["type"]);
        Assert.Equal("date-time", (string?)alert["raisedAt"]!["format"]);
        Assert.Equal("string", (string?)alert["raisedAt"]!["type"]);
        Assert.Equal("number", (string?)alert["loadDropPercent"]!["type"]);
        Assert.Equal("number", (string?)alert["loadDropInterval"]!["items"]!["type"]);
        Assert.Equal(["null", "number"], schemas["PassageView"]!["properties"]!["weightKg"]!["type"]!.AsArray().Select(type => (string)type!).Order());
        Assert.Equal("date", (string?)schemas["CowView"]!["properties"]!["calvedOn"]!["format"]);
    }

    private static IEnumerable<(string Name, JsonNode Operation)> Operations(JsonNode document) =>
        document["paths"]!.AsObject().SelectMany(path => path.Value!.AsObject().Select(method => ($"{method.Key} {path.Key}", method.Value!)));
}
