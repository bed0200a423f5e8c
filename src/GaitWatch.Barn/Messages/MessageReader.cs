using System.Collections.Immutable;
using System.Text.Json;
using GaitWatch.Gait;
using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>
/// Turns a message into an input. What cannot be read becomes a <see cref="RejectedInput"/> with a reason; nothing is thrown
/// and nothing is dropped. Unknown fields are ignored, the order of fields is free.
/// </summary>
/// <remarks>Safe to use from several threads; looks at nothing but its arguments and how long frames are kept.</remarks>
public sealed class MessageReader
{
    /// <summary>A live message's time may lie this far ahead of its arrival (contract).</summary>
    public static readonly TimeSpan FurthestAhead = TimeSpan.FromDays(1);

    private readonly TopicScheme _topics;
    private readonly ImmutableArray<TwinPlate> _platforms;
    private readonly Func<DateTimeOffset?> _framesKeptFrom;
    private readonly int _longestPayload;

    /// <summary>Makes a reader for one farm.</summary>
    /// <param name="options">Farm, platforms and the longest payload that is read.</param>
    /// <param name="framesKeptFrom">
    /// Tells from when on frames and tags are kept (<see cref="Progress.FramesKeptFrom"/>); null, or telling null: all are.
    /// </param>
    public MessageReader(BarnOptions options, Func<DateTimeOffset?>? framesKeptFrom = null)
    {
        _topics = new TopicScheme(options.Farm);
        _platforms = options.Platforms;
        _framesKeptFrom = framesKeptFrom ?? (() => null);
        _longestPayload = options.LongestPayloadBytes;
    }

    /// <summary>Reads one message.</summary>
    /// <param name="topic">Its topic.</param>
    /// <param name="payload">Its payload as it came.</param>
    /// <param name="receivedAt">When it arrived.</param>
    /// <param name="live">Whether it came from a device just now rather than from a recording; only then can it be ahead of its arrival.</param>
    public Input Read(string topic, ReadOnlySpan<byte> payload, DateTimeOffset receivedAt, bool live)
    {
        if (!_topics.TryRead(topic, out var name, out var kind, out var fault))
            return Reject(topic, payload, new(RejectionReasons.UnknownTopic, fault));
        var platform = _platforms.FirstOrDefault(one => one.Id == name);
        if (platform is null)
        {
            var known = string.Join(", ", _platforms.Select(one => $"'{one.Id}'"));
            return Reject(topic, payload, new(RejectionReasons.UnknownPlatform, $"platform in the topic is '{name}': {known} set up in GaitWatch:Platforms."));
        }

        if (payload.Length > _longestPayload)
            return Reject(topic, payload, new(RejectionReasons.TooLarge, $"payload is {payload.Length} bytes: at most {_longestPayload} bytes are read."));
        if (Json.CheckWhole(payload) is { } unreadable)
            return Reject(topic, payload, unreadable);

        var latest = live ? receivedAt + FurthestAhead : DateTimeOffset.MaxValue;
        var json = new Utf8JsonReader(payload);
        json.Read();
        Input? input = null;
        var bad = kind switch
        {
            TopicKind.Frames => Frames(ref json, platform, latest, out input),
            TopicKind.Tag => Tag(ref json, platform, latest, out input),
            TopicKind.Passage => Passage(ref json, platform, latest, out input),
            _ => Status(ref json, platform, latest, out input),
        };
        return bad is { } found ? Reject(topic, payload, found) : input!;
    }

    private static RejectedInput Reject(string topic, ReadOnlySpan<byte> payload, Fault fault) =>
        new(topic, fault.Reason, fault.Detail, payload[..Math.Min(payload.Length, RejectedInput.LongestPayload)].ToArray());

    private static Fault? Ahead(string field, DateTimeOffset time, DateTimeOffset latest) => time > latest
        ? new(RejectionReasons.InFuture, $"{field} is {Rfc3339.Show(time)}: more than a day ahead of its arrival; is the device's clock right?")
        : null;

    private Fault? Late(string field, DateTimeOffset time, DateTimeOffset end) => end <= _framesKeptFrom()
        ? new(RejectionReasons.TooLate, $"{field} is {Rfc3339.Show(time)}: frames and tags are kept for GaitWatch:FrameRetentionDays, and those of that time are gone.")
        : null;

    private Fault? Frames(ref Utf8JsonReader json, TwinPlate platform, DateTimeOffset latest, out Input? input)
    {
        input = null;
        var fault = FrameReading.Read(ref json, platform, out var frame);
        if (frame is null)
            return fault;
        input = new FrameInput(platform.Id, frame);
        return Ahead("t0", frame.T0, latest) ?? Late("t0", frame.T0, frame.End);
    }

    private Fault? Tag(ref Utf8JsonReader json, TwinPlate platform, DateTimeOffset latest, out Input? input)
    {
        input = null;
        if (TagReading.Read(ref json, out var read) is { } fault)
            return fault;
        input = new TagInput(platform.Id, read);
        return Ahead("t", read.At, latest) ?? Late("t", read.At, read.At);
    }

    private static Fault? Passage(ref Utf8JsonReader json, TwinPlate platform, DateTimeOffset latest, out Input? input)
    {
        input = null;
        var fault = PassageReading.Read(ref json, out var passage);
        if (passage is null)
            return fault;
        input = new DevicePassageInput(platform.Id, passage);
        return Ahead("endedAt", passage.EndedAt, latest);
    }

    private static Fault? Status(ref Utf8JsonReader json, TwinPlate platform, DateTimeOffset latest, out Input? input)
    {
        var fault = StatusReading.Read(ref json, platform.Id, out var status);
        input = status;
        return status?.At is { } at ? Ahead("t", at, latest) : fault;
    }
}
