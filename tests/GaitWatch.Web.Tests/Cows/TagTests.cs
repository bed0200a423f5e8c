using System.Net;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

/// <summary>A cow is named by her number or by her tag, wherever a number is asked for.</summary>
public sealed class TagTests : IAsyncLifetime
{
    private const string Tag = "982000000000417";

    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("41", 7), Some.Cow("88", 88));
        await _farm.PassAsync(Some.Passage("p", 417, Some.Now));
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Her_tag_leads_to_her_card_her_passages_and_her_findings()
    {
        Assert.Equal("417", (string?)(await _farm.GetAsync($"/api/cows/{Tag}"))["cow"]);
        Assert.Equal("417", (string?)(await _farm.GetAsync("/api/cows/982 000000000417"))["cow"]);
        Assert.Equal("417", (string?)Assert.Single(await _farm.ListAsync($"/api/cows/{Tag}/passages"))!["cow"]);
        using (var created = await _farm.PostAsync($"/api/cows/{Tag}/findings", new { id = "f", at = "2026-06-09T10:20:00.000Z", foot = "rh", lesion = "SU", actions = new[] { "trimmed" } }))
        {
            Assert.Equal(HttpStatusCode.Created, created.StatusCode);
            Assert.Equal("417", (string?)JsonNode.Parse(await created.Content.ReadAsStringAsync())!["cow"]);
        }

        // The same, sent again by her number, counts once.
        using (var again = await _farm.PostAsync("/api/cows/417/findings", new { id = "f", at = "2026-06-09T10:20:00.000Z", foot = "rh", lesion = "SU", actions = new[] { "trimmed" } }))
            Assert.Equal(HttpStatusCode.OK, again.StatusCode);
        Assert.Single(await _farm.ListAsync($"/api/findings?cow={Tag}"));
        Assert.Single(await _farm.ListAsync($"/api/cows/{Tag}/recovery"));
        using var unknown = await _farm.Http.GetAsync("/api/cows/982000000000999");
        Assert.Equal(HttpStatusCode.NotFound, unknown.StatusCode);
    }

    [Fact]
    public async Task A_part_of_a_number_or_tag_finds_who_is_meant_the_exact_number_first()
    {
        Assert.Equal(["41", "417"], await FoundAsync("41"));
        Assert.Equal(["417"], await FoundAsync("000417"));
        Assert.Equal(["417"], await FoundAsync(Tag));
        Assert.Empty(await FoundAsync("nobody"));
        Assert.Equal(["41"], (await _farm.ListAsync("/api/cows?find=41&page=1&pageSize=1")).Select(cow => (string)cow!["cow"]!));
    }

    [Fact]
    public async Task Findings_of_a_cow_known_by_her_tag_alone_are_hers_once_she_is_registered()
    {
        using (var created = await _farm.PostAsync("/api/cows/982000000000555/findings", new { id = "g", at = "2026-06-09T10:20:00.000Z", foot = "lh", lesion = "WLF", actions = new[] { "trimmed" } }))
            Assert.Equal("982000000000555", (string?)JsonNode.Parse(await created.Content.ReadAsStringAsync())!["cow"]);
        await _farm.RegisterAsync(Some.Cow("555", 555));
        Assert.Equal("555", (string?)Assert.Single(await _farm.ListAsync("/api/findings?cow=555"))!["cow"]);
    }

    private async Task<string[]> FoundAsync(string text) =>
        [.. (await _farm.ListAsync($"/api/cows?find={Uri.EscapeDataString(text)}")).Select(cow => (string)cow!["cow"]!)];
}
