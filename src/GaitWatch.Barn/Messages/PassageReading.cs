using System.Text.Json;
using GaitWatch.Gait;

namespace GaitWatch.Barn;

/// <summary>Reads the payload of a <c>passage</c> message.</summary>
internal static class PassageReading
{
    /// <summary>No leg of a cow carries more, kg.</summary>
    public const double LargestLegLoadKg = 1500;

    /// <summary>Longest id of a device, characters.</summary>
    public const int LongestId = 100;

    /// <summary>No walk over a platform lasts longer.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromHours(1);

    /// <summary>Reads a passage that a device has summed up; a fault when it cannot be used.</summary>
    public static Fault? Read(ref Utf8JsonReader json, out DevicePassage? passage)
    {
        passage = null;
        string? id = null;
        Eid? eid = null;
        var eidGiven = false;
        DateTimeOffset? startedAt = null, endedAt = null;
        PerLeg<double>? loads = null;
        while (Json.NextField(ref json, out var field, out var fault))
        {
            if (fault is not null)
                return fault;
            switch (field)
            {
                case "id":
                    if (id is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Text(ref json, field, LongestId, out id)) is not null)
                        return fault;
                    break;
                case "eid":
                    if (eidGiven)
                        return Json.Twice(field);
                    eidGiven = true;
                    if (json.TokenType == JsonTokenType.Null)
                        break;
                    if ((fault = TagReading.ReadEid(ref json, out var code)) is not null)
                        return fault;
                    eid = code;
                    break;
                case "startedAt":
                    if (startedAt is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Time(ref json, field, out var first)) is not null)
                        return fault;
                    startedAt = first;
                    break;
                case "endedAt":
                    if (endedAt is not null)
                        return Json.Twice(field);
                    if ((fault = Json.Time(ref json, field, out var last)) is not null)
                        return fault;
                    endedAt = last;
                    break;
                case "loadKg":
                    if (loads is not null)
                        return Json.Twice(field);
                    if ((fault = ReadLoads(ref json, out var read)) is not null)
                        return fault;
                    loads = read;
                    break;
                default:
                    json.Skip();
                    break;
            }
        }

        if (id is null)
            return Json.Missing("id", "the device's id of the passage, unique on the platform");
        if (startedAt is null)
            return Json.Missing("startedAt", "the time of the first contact");
        if (endedAt is null)
            return Json.Missing("endedAt", "the time of the last lift");
        if (loads is null)
            return Json.Missing("loadKg", "an object with lf, rf, lh and rh in kg");
        if (endedAt < startedAt || endedAt - startedAt > Longest)
            return new(RejectionReasons.OutOfRange, $"endedAt is {Rfc3339.Show(endedAt.Value)}: not before startedAt {Rfc3339.Show(startedAt.Value)} and within an hour of it.");
        passage = new DevicePassage(id, eid, startedAt.Value, endedAt.Value, loads.Value);
        return null;
    }

    private static Fault? ReadLoads(ref Utf8JsonReader json, out PerLeg<double> loads)
    {
        loads = default;
        if (json.TokenType != JsonTokenType.StartObject)
            return new(RejectionReasons.WrongType, $"loadKg is {Json.Found(ref json)}: an object with lf, rf, lh and rh in kg.");
        var read = new double?[Legs.All.Length];
        while (Json.NextField(ref json, out var name, out var fault))
        {
            if (fault is not null)
                return fault;
            if (!Legs.TryParseWireName(name, out var leg))
            {
                json.Skip();
                continue;
            }

            if (read[(int)leg] is not null)
                return Json.Twice($"loadKg.{name}");
            // Null is a leg that was not measured; the passage keeps it as a load of zero, which makes it incomplete.
            if (json.TokenType == JsonTokenType.Null)
                read[(int)leg] = 0;
            else if ((fault = Json.Number(ref json, $"loadKg.{name}", 0, LargestLegLoadKg, "kg", out var load)) is not null)
                return fault;
            else
                read[(int)leg] = load;
        }

        foreach (var leg in Legs.All)
        {
            if (read[(int)leg] is null)
                return Json.Missing($"loadKg.{leg.WireName()}", "the load of each leg in kg, null where it was not measured");
        }

        loads = PerLeg.From(leg => read[(int)leg]!.Value);
        return null;
    }
}
