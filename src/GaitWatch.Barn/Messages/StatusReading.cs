using System.Text.Json;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>Reads the payload of a <c>status</c> message. One without <c>t</c> is the device's last will.</summary>
internal static class StatusReading
{
    /// <summary>Longest name of a firmware, characters.</summary>
    public const int LongestFirmware = 100;

    /// <summary>Reads a platform's word on itself; a fault when it cannot be used.</summary>
    public static Fault? Read(ref Utf8JsonReader json, string platform, out StatusInput? status)
    {
        status = null;
        bool? online = null;
        DateTimeOffset? at = null;
        string? firmware = null;
        while (Json.NextField(ref json, out var field, out var fault))
        {
            if (fault is not null)
                return fault;
            switch (field)
            {
                case "online":
                    if (online is not null)
                        return Json.Twice(field);
                    if (json.TokenType is not (JsonTokenType.True or JsonTokenType.False))
                        return new(RejectionReasons.WrongType, $"online is {Json.Found(ref json)}: true or false.");
                    online = json.GetBoolean();
                    break;
                case "t" when json.TokenType != JsonTokenType.Null:
                    if (at is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Time(ref json, field, out var time)) is not null)
                        return fault;
                    at = time;
                    break;
                case "firmware" when json.TokenType != JsonTokenType.Null:
                    if (firmware is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Text(ref json, field, LongestFirmware, out firmware)) is not null)
                        return fault;
                    break;
                default:
                    json.Skip();
                    break;
            }
        }

        if (online is null)
            return Json.Missing("online", "true or false");
        status = new StatusInput(platform, online.Value, at, firmware);
        return null;
    }
}
