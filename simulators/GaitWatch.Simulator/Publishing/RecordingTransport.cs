using System.Buffers;
using System.Text.Json;

namespace GaitWatch.Simulator;

/// <summary>
/// Writes the barn's inputs to a stream as recorded inputs, one JSON object a line: <c>{"topic","payload"}</c> for a message,
/// <c>{"method","route","body"}</c> for a write. A body that is not JSON becomes a string.
/// </summary>
/// <param name="stream">Where to; it is the caller's to dispose of.</param>
public sealed class RecordingTransport(Stream stream) : IBarnTransport
{
    private readonly ArrayBufferWriter<byte> _line = new(4096);

    /// <summary>Lines written.</summary>
    public long Lines { get; private set; }

    /// <inheritdoc/>
    public async ValueTask SendAsync(BarnInput input, CancellationToken cancellationToken)
    {
        _line.ResetWrittenCount();
        using (var json = new Utf8JsonWriter(_line))
        {
            json.WriteStartObject();
            switch (input)
            {
                case BarnMessage message:
                    json.WriteString("topic", message.Topic);
                    json.WritePropertyName("payload");
                    json.WriteRawValue(message.Payload.Span);
                    break;
                case BarnWrite write:
                    json.WriteString("method", write.Method);
                    json.WriteString("route", write.Route);
                    json.WritePropertyName("body");
                    if (write.ContentType == "application/json")
                        json.WriteRawValue(write.Body);
                    else
                        json.WriteStringValue(write.Body);
                    break;
            }

            json.WriteEndObject();
        }

        _line.Write("\n"u8);
        await stream.WriteAsync(_line.WrittenMemory, cancellationToken);
        Lines++;
    }

    /// <inheritdoc/>
    public Task FlushAsync(CancellationToken cancellationToken) => stream.FlushAsync(cancellationToken);
}
