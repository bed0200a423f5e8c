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
                    .SelectMany(field => Faults(field.Value).Select(fault => Named(field.Name, fault))));
            }

            return string.Join('\n', lines);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            return $"The service answered {(int)status} {status}.";
        }
    }

    private static IEnumerable<string> Faults(JsonElement faults) =>
        faults.ValueKind == JsonValueKind.Array ? faults.EnumerateArray().Select(fault => fault.ToString()) : [faults.ToString()];

    // Most faults begin with their field's name; one of a file has its line there instead.
    private static string Named(string field, string fault) => fault.StartsWith(field, StringComparison.Ordinal) ? $"  {fault}" : $"  {field}: {fault}";

    private static string? Text(JsonElement problem, string name) =>
        problem.TryGetProperty(name, out var value) && value.ValueKind == JsonValueKind.String ? value.GetString() : null;
}
