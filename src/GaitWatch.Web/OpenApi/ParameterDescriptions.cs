using System.Collections.Frozen;
using System.Text.Json.Nodes;
using GaitWatch.Lameness;
using Microsoft.OpenApi;

namespace GaitWatch.Web;

/// <summary>What each parameter means, said once: a name means the same on every route.</summary>
internal static class ParameterDescriptions
{
    public static FrozenDictionary<string, (string Meaning, Func<OpenApiSchema> Shape)> All { get; } =
        new Dictionary<string, (string, Func<OpenApiSchema>)>
        {
            ["cow"] = ("The cow's number or name on the farm, or the 15 digits of her tag.", Text),
            ["find"] = ("A part of a cow's number or tag.", Text),
            ["id"] = ("The id, as a list gave it.", Text),
            ["platform"] = ("A platform's id.", Text),
            ["date"] = ("A day of the farm; where it may be left out, that of the newest event.", Date),
            ["visit"] = ("The day of a visit; default: the next one.", Date),
            ["from"] = ("Begin of the span, inclusive: a date (midnight in the farm's zone) or an RFC 3339 instant.", Text),
            ["to"] = ("End of the span, exclusive: a date (midnight in the farm's zone) or an RFC 3339 instant.", Text),
            ["at"] = ("The instant at which it was entered (RFC 3339); default: arrival.", Instant),
            ["state"] = ("Only alerts in this state.", () => Words(Enum.GetValues<AlertState>().Select(s => s.WireName()))),
            ["quality"] = ("Only passages of this quality.", () => Words(["accepted", "rejected"])),
            ["page"] = ("Which page of the list, from 1; default: the whole list, or 1 when pageSize is given.", () => Whole(1, 1_000_000)),
            ["pageSize"] = ($"Items a page; default {QueryReader.DefaultPageSize} when page is given.", () => Whole(1, QueryReader.LargestPageSize)),
            ["seconds"] = ($"How much of the end is averaged, seconds; default {PlatformRoutes.UsualSeconds:0}.", Figure),
            ["partial"] = ("Take the good rows even when others are bad.", () => new OpenApiSchema { Type = JsonSchemaType.Boolean }),
        }.ToFrozenDictionary();

    private static OpenApiSchema Text() => new() { Type = JsonSchemaType.String };

    private static OpenApiSchema Date() => new() { Type = JsonSchemaType.String, Format = "date" };

    private static OpenApiSchema Instant() => new() { Type = JsonSchemaType.String, Format = "date-time" };

    private static OpenApiSchema Whole(int least, int most) => new()
    {
        Type = JsonSchemaType.Integer,
        Format = "int32",
        Minimum = least.ToString(System.Globalization.CultureInfo.InvariantCulture),
        Maximum = most.ToString(System.Globalization.CultureInfo.InvariantCulture),
    };

    private static OpenApiSchema Figure() => new() { Type = JsonSchemaType.Number, Format = "double" };

    private static OpenApiSchema Words(IEnumerable<string> words) => new() { Type = JsonSchemaType.String, Enum = [.. words.Select(word => (JsonNode)word)] };
}
