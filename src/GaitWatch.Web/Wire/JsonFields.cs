using System.Diagnostics.CodeAnalysis;
using System.Text.Json;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>
/// Reads the members of a JSON object by name, gathering everything that is wrong. Members it is not asked for are ignored;
/// a member that is null or missing reads as null.
/// </summary>
internal sealed class JsonFields
{
    private readonly JsonElement _object;

    private JsonFields(JsonElement value) => _object = value;

    public Faults Faults { get; } = new();

    /// <summary>Parses a body that must be a JSON object.</summary>
    public static bool TryParse(ReadOnlyMemory<byte> body, [NotNullWhen(true)] out JsonFields? fields, [NotNullWhen(false)] out Refusal? refused)
    {
        fields = null;
        refused = null;
        try
        {
            using var document = JsonDocument.Parse(body);
            if (document.RootElement.ValueKind == JsonValueKind.Object)
            {
                fields = new JsonFields(document.RootElement.Clone());
                return true;
            }

            refused = Refusal.Invalid(Faults.Of("body", $"body is {Kind(document.RootElement)}: a JSON object is needed."));
        }
        catch (JsonException e)
        {
            var where = e.LineNumber is { } line ? $" at line {line + 1}, byte {e.BytePositionInLine}" : "";
            refused = Refusal.Invalid(Faults.Of("body", $"body cannot be read as JSON{where}: a JSON object in UTF-8 is needed."));
        }

        return false;
    }

    public string? Text(string name, int longest)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind != JsonValueKind.String)
            return Wrong<string>(name, member, "text in quotes is needed");
        var text = member.GetString()!;
        if (text.Length <= longest)
            return text;
        Faults.Add(name, $"{name} has {text.Length} characters: at most {longest} are taken.");
        return null;
    }

    public DateTimeOffset? Instant(string name)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind == JsonValueKind.String && Instants.TryParse(member.GetString(), out var instant))
            return instant;
        Wrong<string>(name, member, "a time such as 2026-03-02T05:14:07.250Z is needed");
        return null;
    }

    /// <summary>An instant, or a date, which means its midnight in the farm's zone.</summary>
    public DateTimeOffset? InstantOrDay(string name, FarmCalendar calendar)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind == JsonValueKind.String)
        {
            if (Days.TryParse(member.GetString(), out var day))
                return calendar.StartOf(day);
            if (Instants.TryParse(member.GetString(), out var instant))
                return instant;
        }

        Wrong<string>(name, member, "a date such as 2026-03-02 or a time such as 2026-03-02T05:14:07.250Z is needed");
        return null;
    }

    public DateOnly? Day(string name)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind == JsonValueKind.String && Days.TryParse(member.GetString(), out var day))
            return day;
        Wrong<string>(name, member, "a date such as 2026-03-02 is needed");
        return null;
    }

    public int? Whole(string name)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind == JsonValueKind.Number && member.TryGetInt32(out var value))
            return value;
        Wrong<string>(name, member, "a whole number is needed");
        return null;
    }

    private JsonElement? Member(string name) =>
        _object.TryGetProperty(name, out var member) && member.ValueKind != JsonValueKind.Null ? member : null;

    private T? Wrong<T>(string name, JsonElement found, string right)
        where T : class
    {
        Faults.Add(name, $"{name} is {Kind(found)}: {right}.");
        return null;
    }

    private static string Kind(JsonElement found) => found.ValueKind switch
    {
        JsonValueKind.Object => "an object",
        JsonValueKind.Array => "an array",
        JsonValueKind.String => $"'{Shorten(found.GetString()!)}'",
        JsonValueKind.Null => "null",
        _ => Shorten(found.GetRawText()),
    };

    private static string Shorten(string text) => text.Length > 60 ? text[..60] + "…" : text;
}
