using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GaitWatch.Simulator;

namespace GaitWatch.Web.Tests;

public sealed class SimulatedWritesTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public Task InitializeAsync() => _farm.InitializeAsync();

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Everything_that_a_simulated_barn_enters_is_taken()
    {
        var herd = new SimulatedHerd(HerdSpec.Barn(seed: 4, cows: 20, days: 100));
        var writes = BarnFeed.History(herd, new BarnFeedOptions()).OfType<BarnWrite>().ToArray();
        var visits = writes.Count(write => write.Route.StartsWith("/api/visits/", StringComparison.Ordinal));
        var findings = writes.Count(write => write.Route.EndsWith("/findings", StringComparison.Ordinal));
        Assert.True(visits >= 3 && findings >= 20, $"{visits} visits, {findings} findings: too few to prove something.");

        var lines = writes.Select(write => new JsonObject
        {
            ["method"] = write.Method,
            ["route"] = write.Route,
            ["body"] = write.ContentType == "application/json" ? JsonNode.Parse(write.Body) : write.Body,
        }.ToJsonString());
        using var response = await _farm.Http.PostAsync("/api/inputs", new StringContent(string.Join('\n', lines), Encoding.UTF8, "application/x-ndjson"));
        var answer = JsonNode.Parse(await response.Content.ReadAsStringAsync())!;
        Assert.True(answer["faults"]!.AsArray().Count == 0, answer["faults"]!.ToJsonString(new JsonSerializerOptions { WriteIndented = true }));
        Assert.Equal(visits, (await _farm.ListAsync("/api/visits")).Count);
        Assert.Equal(findings, (await _farm.ListAsync("/api/findings")).Count);
    }
}
