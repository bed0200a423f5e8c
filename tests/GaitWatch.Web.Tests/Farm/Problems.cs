using System.Net;
using System.Text.Json.Nodes;

namespace GaitWatch.Web.Tests;

/// <summary>Checks problem details (RFC 9457) as the contract wants them.</summary>
internal static class Problems
{
    public static async Task<JsonObject> ReadAsync(HttpResponseMessage response, HttpStatusCode status)
    {
        var body = await response.Content.ReadAsStringAsync();
        Assert.True(response.StatusCode == status, $"{(int)response.StatusCode} instead of {(int)status}: {body}");
        Assert.Equal("application/problem+json", response.Content.Headers.ContentType?.MediaType);
        var problem = JsonNode.Parse(body)!.AsObject();
        Assert.Equal((int)status, (int?)problem["status"]);
        Assert.False(string.IsNullOrWhiteSpace((string?)problem["title"]));
        return problem;
    }

    public static async Task AssertAsync(HttpResponseMessage response, HttpStatusCode status, string field, string sentence)
    {
        var problem = await ReadAsync(response, status);
        Assert.Equal(sentence, (string?)Assert.Single(problem["errors"]![field]!.AsArray()));
        Assert.Contains(sentence, (string?)problem["detail"], StringComparison.Ordinal);
    }
}
