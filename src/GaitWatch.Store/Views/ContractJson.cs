using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace GaitWatch.Store;

/// <summary>How values look on the wire: names in camelCase, times RFC 3339 in UTC with milliseconds, null where a figure could not be measured.</summary>
public static class ContractJson
{
    /// <summary>The options for every payload that leaves the service.</summary>
    public static JsonSerializerOptions Options { get; } = Make();

    /// <summary>Applies the contract's rules to options made elsewhere.</summary>
    public static void Apply(JsonSerializerOptions options)
    {
        options.PropertyNamingPolicy = JsonNamingPolicy.CamelCase;
        options.DictionaryKeyPolicy = null;
        options.DefaultIgnoreCondition = JsonIgnoreCondition.Never;
        options.NumberHandling = JsonNumberHandling.Strict;
        options.Converters.Add(new UtcMillisecondsConverter());
    }

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions();
        Apply(options);
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private sealed class UtcMillisecondsConverter : JsonConverter<DateTimeOffset>
    {
        public override DateTimeOffset Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.TokenType == JsonTokenType.String && reader.TryGetDateTimeOffset(out var value)
                ? value.ToUniversalTime()
                : throw new JsonException("An RFC 3339 time such as 2026-03-02T05:14:07.250Z is needed.");

        public override void Write(Utf8JsonWriter writer, DateTimeOffset value, JsonSerializerOptions options) =>
            writer.WriteStringValue(value.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture));
    }
}
