using System.Buffers;
using System.Globalization;
using System.Text.Json;

namespace GaitWatch.Simulator;

/// <summary>The messages' payloads: camelCase JSON, times RFC 3339 in UTC with milliseconds, kilograms.</summary>
public static class Payloads
{
    /// <summary>A time as messages carry it: <c>2026-03-02T05:14:07.250Z</c>.</summary>
    public static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    /// <summary>A stretch of samples of every cell.</summary>
    /// <param name="sequence">Rises by 1 from frame to frame, from 0 when the device starts.</param>
    /// <param name="start">When the first sample was taken.</param>
    /// <param name="crossing">Whose samples.</param>
    /// <param name="from">Index of the first sample.</param>
    /// <param name="count">How many.</param>
    public static ReadOnlyMemory<byte> Frame(long sequence, DateTimeOffset start, SimulatedCrossing crossing, int from, int count) =>
        Frame(sequence, start, crossing.Platform, crossing.Samples, from, count);

    /// <summary>A stretch of samples of every cell.</summary>
    /// <param name="sequence">Rises by 1 from frame to frame, from 0 when the device starts.</param>
    /// <param name="start">When the first sample was taken.</param>
    /// <param name="platform">Whose samples.</param>
    /// <param name="samples">Readings in kg, for each cell in the platform's order.</param>
    /// <param name="from">Index of the first sample.</param>
    /// <param name="count">How many.</param>
    public static ReadOnlyMemory<byte> Frame(long sequence, DateTimeOffset start, SimulatedPlatform platform, float[][] samples, int from, int count) => Write(json =>
    {
        json.WriteNumber("v", 1);
        json.WriteNumber("seq", sequence);
        json.WriteString("t0", Time(start));
        json.WriteNumber("hz", platform.Hz);
        json.WriteStartObject("cells");
        for (var cell = 0; cell < samples.Length; cell++)
        {
            json.WriteStartArray(platform.Cells[cell].Id);
            foreach (var kg in samples[cell].AsSpan(from, count))
                json.WriteNumberValue(kg);
            json.WriteEndArray();
        }

        json.WriteEndObject();
    });

    /// <summary>An ear tag read at the entry.</summary>
    public static ReadOnlyMemory<byte> Tag(DateTimeOffset at, string eid) => Write(json =>
    {
        json.WriteNumber("v", 1);
        json.WriteString("t", Time(at));
        json.WriteString("eid", eid);
    });

    /// <summary>A passage that the device has summed up.</summary>
    public static ReadOnlyMemory<byte> Passage(PassageEvent passage) => Write(json =>
    {
        json.WriteNumber("v", 1);
        json.WriteString("id", passage.Id);
        json.WriteString("eid", passage.Eid);
        json.WriteString("startedAt", Time(passage.At));
        json.WriteString("endedAt", Time(passage.EndedAt));
        json.WriteStartObject("loadKg");
        foreach (var foot in Feet.All)
            json.WriteNumber(foot.Word(), passage.LoadKg[foot]);
        json.WriteEndObject();
    });

    /// <summary>The device's state. Its last will has no time.</summary>
    public static ReadOnlyMemory<byte> Status(bool online, DateTimeOffset? at, string firmware = "1.0.0") => Write(json =>
    {
        json.WriteNumber("v", 1);
        json.WriteBoolean("online", online);
        if (at is { } time)
            json.WriteString("t", Time(time));
        json.WriteString("firmware", firmware);
    });

    internal static ReadOnlyMemory<byte> Write(Action<Utf8JsonWriter> members)
    {
        var buffer = new ArrayBufferWriter<byte>(512);
        using (var json = new Utf8JsonWriter(buffer))
        {
            json.WriteStartObject();
            members(json);
            json.WriteEndObject();
        }

        return buffer.WrittenMemory;
    }
}
