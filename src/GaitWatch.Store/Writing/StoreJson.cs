using System.Text.Json;
using System.Text.Json.Serialization;
using GaitWatch.Gait;

namespace GaitWatch.Store;

/// <summary>How bodies are kept inside the store: exact, and readable in the database's own shell.</summary>
internal static class StoreJson
{
    public static JsonSerializerOptions Options { get; } = Make();

    public static string Write<T>(T value) => JsonSerializer.Serialize(value, Options);

    public static T Read<T>(string body) =>
        JsonSerializer.Deserialize<T>(body, Options) ?? throw new InvalidDataException($"A stored {typeof(T).Name} is 'null'.");

    private static JsonSerializerOptions Make()
    {
        var options = new JsonSerializerOptions { PropertyNamingPolicy = JsonNamingPolicy.CamelCase };
        options.Converters.Add(new EidConverter());
        options.Converters.Add(new JsonStringEnumConverter());
        options.MakeReadOnly(populateMissingResolver: true);
        return options;
    }

    private sealed class EidConverter : JsonConverter<Eid>
    {
        public override Eid Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) => Eid.Parse(reader.GetString() ?? "");

        public override void Write(Utf8JsonWriter writer, Eid value, JsonSerializerOptions options) => writer.WriteStringValue(value.ToString());
    }
}
