using System.Net;
using System.Net.Http.Headers;
using System.Text.Json.Nodes;
using GaitWatch.Gait;

namespace GaitWatch.Web.Tests;

/// <summary>
/// Findings and alerts for other programs. Names and enumerated values: the public JSON schemas of the ICAR Animal Data Exchange
/// standard, version 1; CSV: RFC 4180.
/// </summary>
public sealed class ExportTests : IAsyncLifetime
{
    // enums/icarPositionOnAnimalType, icarDiagnosisSeverityType, icarAttentionPriorityType: those that occur here.
    private static readonly string[] s_positions = ["LegsFrontLeft", "LegsFrontRight", "LegsRearLeft", "LegsRearRight"];

    private readonly FarmHost _farm = new();

    public async Task InitializeAsync()
    {
        await _farm.InitializeAsync();
        await _farm.RegisterAsync(Some.Cow("417", 417));
        await _farm.PassAsync(Some.Passage("p", 417, Some.Now));
        await _farm.RaiseAsync(Some.Alert("417", Leg.Rh, Some.Now.AddDays(-3)));
        await FindAsync("417", """{"id":"a","at":"2026-06-08T08:00:00Z","foot":"rh","claw":"outer","zone":4,"lesion":"SU","severity":2,"actions":["trimmed","block"],"blockClaw":"inner","by":"Anna","note":"=1+1, \"deep\""}""");
        await FindAsync("99", """{"id":"b","at":"2026-06-08T09:00:00Z","foot":"lf","lesion":"none","actions":["trimmed"]}""");
    }

    public Task DisposeAsync() => _farm.DisposeAsync();

    [Fact]
    public async Task Findings_are_diagnosis_events_with_all_that_was_done_beside_them()
    {
        var events = await _farm.ListAsync("/api/export/findings");
        Assert.Equal(2, events.Count);
        var ulcer = events[0]!;
        Assert.Equal("icarDiagnosisEventResource", (string?)ulcer["resourceType"]);
        Assert.Equal("""{"scheme":"std.iso.11785","id":"982000000000417"}""", ulcer["animal"]!.ToJsonString());
        Assert.Equal("2026-06-08T08:00:00.000Z", (string?)ulcer["eventDateTime"]);
        Assert.Equal("""{"source":"gaitwatch","sourceId":"a","modified":"2026-06-10T05:30:00.000Z","created":"2026-06-10T05:30:00.000Z","creator":"Anna"}""", ulcer["meta"]!.ToJsonString());
        var diagnosis = Assert.Single(ulcer["diagnoses"]!.AsArray())!;
        Assert.Equal(("sole ulcer", "outer claw, zone 4", "Moderate"), ((string?)diagnosis["name"], (string?)diagnosis["site"], (string?)diagnosis["severity"]));
        Assert.Equal("""{"scheme":"gaitwatch.lesion","id":"SU"}""", diagnosis["diagnosisCode"]!.ToJsonString());
        Assert.Contains((string?)Assert.Single(diagnosis["positions"]!.AsArray())!["position"], s_positions);
        Assert.Equal("""["trimmed","block"]""", ulcer["finding"]!["actions"]!.ToJsonString());
        // A cow without a known tag goes by her number; a foot in which nothing was found has no diagnosis.
        Assert.Equal("""{"scheme":"gaitwatch.cow","id":"99"}""", events[1]!["animal"]!.ToJsonString());
        Assert.Empty(events[1]!["diagnoses"]!.AsArray());
        Assert.Single(await _farm.ListAsync("/api/export/findings?from=2026-06-08T08:30:00Z"));
    }

    [Fact]
    public async Task Alerts_are_attention_events_with_their_label()
    {
        var alert = Assert.Single(await _farm.ListAsync("/api/export/alerts"))!;
        Assert.Equal(
            ("icarAttentionEventResource", "Health", "Urgent", "Lameness"),
            ((string?)alert["resourceType"], (string?)alert["category"], (string?)alert["priority"], (string?)Assert.Single(alert["causes"]!.AsArray())));
        Assert.Equal(14.2, (double)alert["deviceAttentionScore"]!);
        Assert.Null(alert["alertEndDateTime"]);
        Assert.Equal(("right", "2026-06-08T08:00:00.000Z"), ((string?)alert["alert"]!["label"], (string?)alert["alert"]!["liftedAt"]));
    }

    [Fact]
    public async Task Csv_keeps_every_value_whole_and_lets_no_spreadsheet_compute_with_a_note()
    {
        var findings = await CsvAsync("/api/export/findings");
        Assert.Equal(3, findings.Length);
        Assert.StartsWith("id,cow,eid,at,foot,claw,zone,lesion,", findings[0], StringComparison.Ordinal);
        Assert.Equal("a,417,982000000000417,2026-06-08T08:00:00.000Z,rh,outer,4,SU,sole ulcer,2,,,trimmed block,inner,,,,,,Anna,\"'=1+1, \"\"deep\"\"\",2026-06-10T05:30:00.000Z,", findings[1]);
        Assert.Equal("b,99,,2026-06-08T09:00:00.000Z,lf,,,none,nothing found,,,,trimmed,,,,,,,,,2026-06-10T05:30:00.000Z,", findings[2]);
        var alerts = await CsvAsync("/api/export/alerts");
        Assert.Equal(2, alerts.Length);
        Assert.Contains(",14.2,11.2,17.2,today,open,,,2026-06-08T08:00:00.000Z,right,", alerts[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_time_that_cannot_be_is_refused()
    {
        foreach (var what in (string[])["findings", "alerts"])
        {
            using var answer = await _farm.Http.GetAsync($"/api/export/{what}?from=spring");
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
            Assert.NotNull(JsonNode.Parse(await answer.Content.ReadAsStringAsync())!["errors"]!["from"]);
        }
    }

    private async Task<string[]> CsvAsync(string route)
    {
        using var request = new HttpRequestMessage(HttpMethod.Get, route) { Headers = { Accept = { new MediaTypeWithQualityHeaderValue("text/csv") } } };
        using var answer = await _farm.Http.SendAsync(request);
        Assert.Equal("text/csv", answer.Content.Headers.ContentType?.MediaType);
        var text = await answer.Content.ReadAsStringAsync();
        Assert.EndsWith("\r\n", text, StringComparison.Ordinal);
        return text[..^2].Split("\r\n");
    }

    private async Task FindAsync(string cow, string body)
    {
        using var answer = await _farm.Http.PostAsync($"/api/cows/{cow}/findings", new StringContent(body, null, "application/json"));
        Assert.True(answer.StatusCode == HttpStatusCode.Created, await answer.Content.ReadAsStringAsync());
    }
}
