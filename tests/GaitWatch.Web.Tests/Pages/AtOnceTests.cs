using System.Net;
using GaitWatch.Gait;

namespace GaitWatch.Web.Tests;

/// <summary>What is kept of the state between readings is never older than the state: whatever is entered or found out shows at once.</summary>
public sealed class AtOnceTests : IAsyncLifetime
{
    private static readonly string[] s_pages = ["/", "/cows", "/herd", "/recovery", "/platforms", "/visits/next"];

    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417), Some.Cow("87", 87));
        await _farm.PassAsync(Some.Passage("a", 417, Some.Now.AddHours(-2)), Some.Passage("b", 87, Some.Now.AddHours(-2)));
        await ReadAllAsync();
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Whatever_changes_is_on_the_next_page()
    {
        // The analysis finds something, without anything new having come in.
        await _farm.RaiseAsync(Some.Alert("417"), Some.Alert("87", Leg.Lh));
        Assert.Equal(["417", "87"], await FlaggedAsync());

        // The register.
        await SentAsync(await _farm.PutAsync("/api/cows/417", new { cow = "417", eid = $"{Some.Tag(417)}", pen = "straw yard" }));
        Assert.Contains("straw yard", (await ReadAllAsync())["/cows"], StringComparison.Ordinal);

        // A visit: who has a place on its list is listed, and its own page names the trimmer.
        await SentAsync(await _farm.PutAsync("/api/visits/2026-06-12", new { trimmer = "Anna", places = 10 }));
        Assert.Contains("Anna", (await ReadAllAsync())["/visits/next"], StringComparison.Ordinal);
        Assert.Equal(["listed", "listed"], (await _farm.ListAsync("/api/flags")).Select(flag => (string)flag!["state"]!));

        // A hand on the list.
        await SentAsync(await _farm.PutAsync("/api/visits/2026-06-12/cows/87", new { hand = "removed", reason = "sold tomorrow" }));
        Assert.Contains("sold tomorrow", (await ReadAllAsync())["/visits/next"], StringComparison.Ordinal);

        // A finding that asks for something, and its being done.
        await SentAsync(await _farm.PostAsync("/api/cows/87/findings", new { id = "f1", at = "2026-06-01T08:00:00Z", foot = "lh", claw = "outer", zone = 4, lesion = "SU", severity = 2, actions = new[] { "trimmed", "wrap" } }));
        Assert.Contains("Take the wrap off", (await ReadAllAsync())["/"], StringComparison.Ordinal);
        var task = (string)(await _farm.ListAsync("/api/follow-ups"))[0]!["id"]!;
        await SentAsync(await _farm.PostAsync($"/api/follow-ups/{Uri.EscapeDataString(task)}/done", new { by = "Jo" }));
        Assert.DoesNotContain("Take the wrap off", (await ReadAllAsync())["/"], StringComparison.Ordinal);

        // A flag closed by hand counts in the herd's figures.
        var flag = (string)(await _farm.ListAsync("/api/flags")).First(one => (string)one!["cow"]! == "417")!["id"]!;
        await SentAsync(await _farm.PostAsync($"/api/alerts/{Uri.EscapeDataString(flag)}/close", new { reason = "seen-walking-sound" }));
        Assert.DoesNotContain("417", await FlaggedAsync());

        // A crossing.
        await _farm.PassAsync(Some.Passage("c", 87, Some.Now.AddMinutes(-3)));
        Assert.Contains("07:27", Html.Text((await ReadAllAsync())["/platforms"]), StringComparison.Ordinal);
    }

    private async Task<string[]> FlaggedAsync()
    {
        await ReadAllAsync();
        return [.. (await _farm.ListAsync("/api/flags")).Select(flag => (string)flag!["cow"]!).Order(StringComparer.Ordinal)];
    }

    private async Task<Dictionary<string, string>> ReadAllAsync()
    {
        var pages = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var page in s_pages)
            pages[page] = await _farm.PageAsync(page);
        return pages;
    }

    private static async Task SentAsync(HttpResponseMessage response)
    {
        using (response)
            Assert.True(response.StatusCode is HttpStatusCode.OK or HttpStatusCode.Created or HttpStatusCode.NoContent, $"{(int)response.StatusCode} {await response.Content.ReadAsStringAsync()}");
    }
}
