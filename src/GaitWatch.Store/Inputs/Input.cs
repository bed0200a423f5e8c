using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>Something that came in over a wall of the service and must be durable before its sender hears of it.</summary>
public abstract record Input;

/// <summary>A frame of raw samples. Known by platform and its first sample's time.</summary>
/// <param name="Platform">The platform.</param>
/// <param name="Frame">The samples.</param>
public sealed record FrameInput(string Platform, Frame Frame) : Input;

/// <summary>A tag read. Known by platform, time and tag.</summary>
/// <param name="Platform">The platform.</param>
/// <param name="Read">The read.</param>
public sealed record TagInput(string Platform, TagRead Read) : Input;

/// <summary>A passage that a device has summed up. Known by platform and the device's id.</summary>
/// <param name="Platform">The platform.</param>
/// <param name="Passage">The passage.</param>
public sealed record DevicePassageInput(string Platform, DevicePassage Passage) : Input;

/// <summary>A platform's word on itself, or its last will.</summary>
/// <param name="Platform">The platform.</param>
/// <param name="Online">Whether it is there.</param>
/// <param name="At">Its own time; null in a last will.</param>
/// <param name="Firmware">Its firmware; null when not said.</param>
public sealed record StatusInput(string Platform, bool Online, DateTimeOffset? At, string? Firmware) : Input;

/// <summary>Something a person entered. Known by its content.</summary>
/// <param name="Write">What.</param>
public sealed record WriteInput(FarmWrite Write) : Input;

/// <summary>A message that could not be used, kept with the reason.</summary>
/// <param name="Topic">Where it came from: a topic, or method and route.</param>
/// <param name="Reason">A short fixed word, such as <c>bad-json</c>.</param>
/// <param name="Detail">The field, what was found and what would be right.</param>
/// <param name="Payload">The message as it came, cut at <see cref="LongestPayload"/> bytes.</param>
public sealed record RejectedInput(string Topic, string Reason, string Detail, byte[] Payload) : Input
{
    /// <summary>How much of a rejected message is kept, bytes.</summary>
    public const int LongestPayload = 64 * 1024;
}
