using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Unicode;

namespace GaitWatch.Barn;

/// <summary>What every payload must fulfil before its fields are looked at, and how single fields are read.</summary>
internal static class Json
{
    /// <summary>The one version of the payloads.</summary>
    public const int Version = 1;

    private const int LongestFound = 24;

    // What common encoders write for a number that is none.
    private static readonly string[] NotNumbers = ["NaN", "nan", "Infinity", "-Infinity", "inf", "-inf", "+Infinity", "+inf"];

    /// <summary>Reads the whole payload once: null when it is one JSON object of a known version.</summary>
    public static Fault? CheckWhole(ReadOnlySpan<byte> payload)
    {
        if (payload.IsEmpty)
            return new(RejectionReasons.BadJson, "payload is empty: a JSON object is needed.");
        if (!Utf8.IsValid(payload))
            return new(RejectionReasons.BadJson, "payload is not UTF-8: JSON is exchanged in UTF-8 (RFC 8259).");
        var json = new Utf8JsonReader(payload);
        var name = "payload";
        string? version = null;
        try
        {
            while (json.Read())
            {
                if (json.CurrentDepth == 0 && json.TokenType is not (JsonTokenType.StartObject or JsonTokenType.EndObject))
                    return new(RejectionReasons.BadJson, $"payload is {Found(ref json)}: a JSON object is needed.");
                if (json.TokenType != JsonTokenType.PropertyName)
                    continue;
                name = Encoding.UTF8.GetString(json.ValueSpan);
                if (json.CurrentDepth != 1 || name != "v")
                    continue;
                json.Read();
                version ??= json.TokenType == JsonTokenType.Number && json.TryGetInt32(out var v) && v == Version ? "" : Found(ref json);
            }
        }
        catch (JsonException fault)
        {
            return Unreadable(payload[(int)json.BytesConsumed..], name, fault);
        }

        return version switch
        {
            null => new(RejectionReasons.MissingField, $"v is missing: {Version} is the version this service knows."),
            "" => null,
            _ => new(RejectionReasons.UnknownVersion, $"v is {version}: {Version} is the version this service knows."),
        };
    }

    /// <summary>The next field of the object begun; the reader stands on its value. False at the object's end.</summary>
    /// <param name="json">The reader, on the start of the object or on the end of a field's value.</param>
    /// <param name="field">The field's name.</param>
    /// <param name="fault">A name that is no text.</param>
    public static bool NextField(ref Utf8JsonReader json, out string field, out Fault? fault)
    {
        field = "";
        fault = null;
        json.Read();
        if (json.TokenType == JsonTokenType.EndObject)
            return false;
        if (!TryText(ref json, out field))
            fault = new(RejectionReasons.BadJson, "a field's name holds half of a surrogate pair: text must be Unicode (RFC 8259).");
        json.Read();
        return true;
    }

    /// <summary>Text of a string or a name; false when it escapes half a surrogate pair.</summary>
    public static bool TryText(ref Utf8JsonReader json, out string text)
    {
        try
        {
            text = json.GetString() ?? "";
            return true;
        }
        catch (InvalidOperationException)
        {
            text = "";
            return false;
        }
    }

    /// <summary>Reads text of at most some characters.</summary>
    public static Fault? Text(ref Utf8JsonReader json, string field, int longest, out string text)
    {
        text = "";
        if (json.TokenType != JsonTokenType.String)
            return new(RejectionReasons.WrongType, $"{field} is {Found(ref json)}: text in quotes is needed.");
        if (!TryText(ref json, out text) || text.Length is 0 || text.Length > longest || text.Any(char.IsControl))
            return new(RejectionReasons.OutOfRange, $"{field} is {Found(ref json)}: 1 to {longest} characters, none of them a control character.");
        return null;
    }

    /// <summary>Reads a finite number within bounds.</summary>
    public static Fault? Number(ref Utf8JsonReader json, string field, double least, double most, string unit, out double number)
    {
        number = 0;
        if (json.TokenType != JsonTokenType.Number)
            return new(RejectionReasons.NotANumber, $"{field} is {Found(ref json)}: a finite number of {unit}.");
        if (!json.TryGetDouble(out number) || !(number >= least && number <= most))
            return new(RejectionReasons.OutOfRange, $"{field} is {Found(ref json)}: {Plain(least)} to {Plain(most)} {unit}.");
        return null;
    }

    /// <summary>Reads an instant.</summary>
    public static Fault? Time(ref Utf8JsonReader json, string field, out DateTimeOffset instant)
    {
        instant = default;
        if (json.TokenType != JsonTokenType.String || !TryText(ref json, out var text) || !Rfc3339.TryParse(text, out instant))
            return new(RejectionReasons.BadTime, $"{field} is {Found(ref json)}: an RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.");
        if (instant < Rfc3339.Earliest || instant >= Rfc3339.Latest)
            return new(RejectionReasons.BadTime, $"{field} is {Found(ref json)}: a time between the years 2000 and 2200; is the device's clock set?");
        return null;
    }

    /// <summary>The fault of a field that is not there.</summary>
    public static Fault Missing(string field, string right) => new(RejectionReasons.MissingField, $"{field} is missing: {right}.");

    /// <summary>The fault of a field given twice: which of the two is meant nobody can tell.</summary>
    public static Fault Twice(string field) => new(RejectionReasons.BadJson, $"{field} stands twice: each field once.");

    /// <summary>What stands where the reader is, in few characters.</summary>
    public static string Found(ref Utf8JsonReader json) => json.TokenType switch
    {
        JsonTokenType.StartObject => "an object",
        JsonTokenType.StartArray => "an array",
        JsonTokenType.String => $"'{Shorten(Encoding.UTF8.GetString(json.ValueSpan))}'",
        _ => Shorten(Encoding.UTF8.GetString(json.ValueSpan)),
    };

    private static Fault Unreadable(ReadOnlySpan<byte> rest, string name, JsonException fault)
    {
        var token = rest.TrimStart(" \t\r\n,:["u8);
        foreach (var word in NotNumbers)
        {
            if (token.StartsWith(Encoding.UTF8.GetBytes(word)))
                return new(RejectionReasons.NotANumber, $"{Shorten(name)} holds {word}: finite numbers only.");
        }

        var place = string.Create(CultureInfo.InvariantCulture, $"line {fault.LineNumber + 1}, byte {fault.BytePositionInLine + 1}");
        return new(RejectionReasons.BadJson, $"payload cannot be read after '{Shorten(name)}' ({place}): one JSON object (RFC 8259) and nothing after it.");
    }

    private static string Shorten(string text) => text.Length > LongestFound ? text[..LongestFound] + "…" : text;

    private static string Plain(double number) => number.ToString("0.###", CultureInfo.InvariantCulture);
}
