using System.Text.Json;
using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>Reads the payload of a <c>tag</c> message.</summary>
internal static class TagReading
{
    /// <summary>Reads a tag read; a fault when it cannot be used.</summary>
    public static Fault? Read(ref Utf8JsonReader json, out TagRead read)
    {
        read = default;
        DateTimeOffset? at = null;
        Eid? eid = null;
        while (Json.NextField(ref json, out var field, out var fault))
        {
            if (fault is not null)
                return fault;
            switch (field)
            {
                case "t":
                    if (at is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Time(ref json, field, out var time)) is not null)
                        return fault;
                    at = time;
                    break;
                case "eid":
                    if (eid is not null)
                        return Json.Twice(field);
                    if ((fault = ReadEid(ref json, out var code)) is not null)
                        return fault;
                    eid = code;
                    break;
                default:
                    json.Skip();
                    break;
            }
        }

        if (at is null)
            return Json.Missing("t", "the time of the read");
        if (eid is null)
            return Json.Missing("eid", "the 15 digits of the tag");
        read = new TagRead(at.Value, eid.Value);
        return null;
    }

    /// <summary>Reads an animal code where the reader stands.</summary>
    public static Fault? ReadEid(ref Utf8JsonReader json, out Eid eid)
    {
        eid = default;
        // A JSON number would lose the leading zeros of a country below 100.
        if (json.TokenType != JsonTokenType.String || !Json.TryText(ref json, out var text))
            return new(RejectionReasons.BadTag, $"eid is {Json.Found(ref json)}: 15 digits by ISO 11784 in quotes.");
        return Eid.TryParse(text, out eid, out var fault) ? null : new(RejectionReasons.BadTag, fault);
    }
}
