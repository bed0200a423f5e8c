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
    private const int MostTexts = 100;

    private readonly JsonElement _object;
    private readonly string _within;

    private JsonFields(JsonElement value, Faults faults, string within = "")
    {
        _object = value;
        _within = within;
        Faults = faults;
    }

    public Faults Faults { get; }

    /// <summary>Parses a body that may be left out: then it has no members.</summary>
    public static bool TryParseOptional(ReadOnlyMemory<byte> body, [NotNullWhen(true)] out JsonFields? fields, [NotNullWhen(false)] out Refusal? refused) =>
        TryParse(body.IsEmpty ? "{}"u8.ToArray() : body, out fields, out refused);

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
                fields = new JsonFields(document.RootElement.Clone(), new Faults());
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
        Faults.Add(_within + name, $"{_within}{name} has {text.Length} characters: at most {longest} are taken.");
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

    public double? Figure(string name)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind == JsonValueKind.Number && member.TryGetDouble(out var value) && double.IsFinite(value))
            return value;
        Wrong<string>(name, member, "a number is needed");
        return null;
    }

    /// <summary>A list of short texts; null when it is missing or cannot be read.</summary>
    public IReadOnlyList<string>? Texts(string name, int longest)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind != JsonValueKind.Array)
            return Wrong<IReadOnlyList<string>>(name, member, "a list of texts in quotes is needed");
        if (member.GetArrayLength() > MostTexts)
        {
            Faults.Add(_within + name, $"{_within}{name} has {member.GetArrayLength()} items: at most {MostTexts} are taken.");
            return null;
        }

        var texts = new List<string>();
        foreach (var item in member.EnumerateArray())
        {
            if (item.ValueKind != JsonValueKind.String)
                return Wrong<IReadOnlyList<string>>(name, item, "each of its items must be text in quotes");
            var text = item.GetString()!;
            texts.Add(text.Length <= longest ? text : text[..longest]);
        }

        return texts;
    }

    /// <summary>The members of an object within; null when it is missing or none. Their faults are told with these.</summary>
    public JsonFields? Object(string name)
    {
        if (Member(name) is not { } member)
            return null;
        return member.ValueKind == JsonValueKind.Object
            ? new JsonFields(member, Faults, $"{_within}{name}.")
            : Wrong<JsonFields>(name, member, "an object is needed");
    }

    /// <summary>The objects of a list, each with its faults told under its place in it; null when it is missing or cannot be read.</summary>
    public IReadOnlyList<JsonFields>? Objects(string name, int most)
    {
        if (Member(name) is not { } member)
            return null;
        if (member.ValueKind != JsonValueKind.Array)
            return Wrong<IReadOnlyList<JsonFields>>(name, member, "a list of objects is needed");
        if (member.GetArrayLength() > most)
        {
            Faults.Add(_within + name, $"{_within}{name} has {member.GetArrayLength()} items: at most {most} are taken.");
            return null;
        }

        var objects = new List<JsonFields>();
        foreach (var item in member.EnumerateArray())
        {
            var place = $"{name}[{objects.Count}]";
            if (item.ValueKind != JsonValueKind.Object)
                return Wrong<IReadOnlyList<JsonFields>>(place, item, "an object is needed");
            objects.Add(new JsonFields(item, Faults, $"{_within}{place}."));
        }

        return objects;
    }

    /// <summary>A member's name as its faults tell it, with the objects it lies in.</summary>
    public string Path(string name) => _within + name;

    private JsonElement? Member(string name) =>
        _object.TryGetProperty(name, out var member) && member.ValueKind != JsonValueKind.Null ? member : null;

    private T? Wrong<T>(string name, JsonElement found, string right)
        where T : class
    {
        Faults.Add(_within + name, $"{_within}{name} is {Kind(found)}: {right}.");
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
