using System.Text.Json.Nodes;

namespace GaitWatch.Acceptance;

/// <summary>What the API says of a herd, in a form in which two barns can be compared.</summary>
internal static class BarnState
{
    /// <summary>Alerts, passages and cows, each as JSON text. <c>revisedAt</c> stands outside the equality of a replay (contract, section 4).</summary>
    public static async Task<(string Alerts, string Passages, string Cows)> OfAsync(HttpClient service)
    {
        var alerts = JsonNode.Parse(await service.GetStringAsync("api/alerts"))!.AsArray();
        foreach (var alert in alerts)
            alert!.AsObject().Remove("revisedAt");
        return (Lines(alerts), Lines(JsonNode.Parse(await service.GetStringAsync("api/passages"))!.AsArray()), Lines(JsonNode.Parse(await service.GetStringAsync("api/cows"))!.AsArray()));
    }

    // A row a line, so that a difference is read off the failure.
    private static string Lines(JsonArray rows) => string.Join('\n', rows.Select(row => row!.ToJsonString()));
}
