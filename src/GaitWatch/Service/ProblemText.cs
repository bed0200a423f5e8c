using System.Net;
using System.Text.Json;

namespace GaitWatch;

/// <summary>The words of problem details (RFC 9457) for a terminal.</summary>
internal static class ProblemText
{
    /// <summary>What an error's body says; its status when it says nothing.</summary>
    public static string Of(HttpStatusCode status, string body)
    {
        try
        {
            using var problem = JsonDocument.Parse(body);
            var root = problem.RootElement;
            var lines = new List<string> { Text(root, "detail") ?? Text(root, "title") ?? $"The service answered {(int)status}." };
            if (root.TryGetProperty("errors", out var errors) && errors.ValueKind == JsonValueKind.Object)
            {
                lines.AddRange(errors.EnumerateObject()
                    .SelectMany(field => field.Value.ValueKind == JsonValueKind.Array ? field.Value.EnumerateArray() : Enumerable.Repeat(field.Value, 1))
                    .Select(fault => $"  {fault}"));
            }

            return string.Join('\n', lines);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return $"The service answered {(int)status} {status}.";
        }
    }

    private static string? Text(JsonElement problem, string name) =>
        problem.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
