using System.Net;

namespace GaitWatch.Web.Tests;

public sealed class AlertEvidenceTests : IAsyncLifetime
{
    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await SampleFarm.FillAsync(_farm);
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task An_alert_shows_the_series_it_rests_on()
    {
        var alert = (await _farm.ListAsync("/api/flags")).First(flag => (string?)flag!["cow"] == "417")!;
        var evidence = await _farm.GetAsync($"/api/alerts/{(string)alert["id"]!}/evidence");
        Assert.Equal("rh", (string?)evidence["leg"]);
        Assert.Equal((string?)alert["onsetAt"], (string?)evidence["onsetAt"]);
        Assert.Equal(1, (double)evidence["limit"]!);
        var points = evidence["points"]!.AsArray();
        // Two crossings a day from three weeks before onset, nine days ago, less the refused.
        Assert.InRange(points.Count, 50, 61);
        Assert.Equal(points.Select(point => (DateTimeOffset)point!["at"]!).Order(), points.Select(point => (DateTimeOffset)point!["at"]!));
        Assert.True((DateTimeOffset)points[0]!["at"]! >= (DateTimeOffset)alert["onsetAt"]! - TimeSpan.FromDays(21));
        // Numbers on the wire are rounded.
        foreach (var point in points)
        {
            var (share, expected, spread) = ((double)point!["share"]!, (double)point["expectedShare"]!, (double)point["shareSpread"]!);
            Assert.Equal((share - expected) / spread, (double)point["residualDeviations"]!, 0.002);
            Assert.Equal((double)point["legEvidence"]!["rh"]!, (double)point["evidence"]!);
        }

        Assert.True((double)points[^1]!["evidence"]! > 1);
        Assert.True((double)points[^1]!["residualDeviations"]! < -3);
    }

    [Fact]
    public async Task A_span_narrows_it_and_a_pair_is_shown_by_its_own_evidence()
    {
        var alert = (await _farm.ListAsync("/api/flags")).First(flag => (string?)flag!["cow"] == "62")!;
        var evidence = await _farm.GetAsync($"/api/alerts/{(string)alert["id"]!}/evidence?from=2026-06-08&to=2026-06-10");
        Assert.Equal("both-hind", (string?)evidence["pattern"]);
        var points = evidence["points"]!.AsArray();
        Assert.InRange(points.Count, 3, 4);
        Assert.All(points, point => Assert.True((double)point!["evidence"]! > (double)point["legEvidence"]!["lh"]!));
    }

    [Fact]
    public async Task An_id_that_is_none_and_a_span_that_cannot_be_read_are_refused()
    {
        using var never = await _farm.Http.GetAsync("/api/alerts/nobody/evidence");
        await Problems.AssertAsync(never, HttpStatusCode.NotFound, "id", "id is 'nobody': no alert ever had it; GET /api/alerts lists those that are.");
        using var soon = await _farm.Http.GetAsync("/api/alerts/nobody/evidence?from=soon");
        await Problems.AssertAsync(
            soon, HttpStatusCode.BadRequest, "from", "from is 'soon': a date such as 2026-03-02 or an instant such as 2026-03-02T05:14:07Z is needed.");
    }
}
