using System.Text;
using System.Text.Json;

namespace GaitWatch.Web;

/// <summary>One line of a recording: a message, a write, or something that is neither.</summary>
internal abstract record RecordedLine
{
    /// <summary>A message: <c>{"topic","payload"}</c>, the payload an object or, for what is not JSON, a string.</summary>
    public sealed record Message(string Topic, byte[] Payload) : RecordedLine;

    /// <summary>A write: <c>{"method","route","body"}</c>, the body an object or, for CSV, a string.</summary>
    public sealed record Write(string Method, string Route, byte[] Body) : RecordedLine;

    /// <summary>Neither; says why.</summary>
    public sealed record Unreadable(string Fault) : RecordedLine;

    /// <summary>Reads a line.</summary>
    public static RecordedLine Read(ReadOnlyMemory<byte> line)
    {
        try
        {
            using var document = JsonDocument.Parse(line);
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object)
                return new Unreadable("The line is no JSON object: {\"topic\",\"payload\"} or {\"method\",\"route\",\"body\"} is needed.");
            if (Text(root, "topic") is { } topic)
            {
                return root.TryGetProperty("payload", out var payload)
                    ? new Message(topic, Bytes(payload))
                    : new Unreadable("payload is missing: the message's payload, an object or, for what is not JSON, a string.");
            }

            return Text(root, "method") is { } method && Text(root, "route") is { } route
                ? new Write(method, route, root.TryGetProperty("body", out var body) ? Bytes(body) : [])
                : new Unreadable("topic is missing or no text, and so are method and route: {\"topic\",\"payload\"} or {\"method\",\"route\",\"body\"} is needed.");
        }
        catch (JsonException e)
        {
            return new Unreadable($"The line cannot be read as JSON from byte {e.BytePositionInLine}: one JSON object a line is needed.");
        }
    }

    private static string? Text(JsonElement root, string name) =>
        root.TryGetProperty(name, out var member) && member.ValueKind == JsonValueKind.String ? member.GetString() : null;

    private static byte[] Bytes(JsonElement value) =>
        Encoding.UTF8.GetBytes(value.ValueKind == JsonValueKind.String ? value.GetString()! : value.GetRawText());
}
