namespace GaitWatch.Barn;

/// <summary>What a device's message is, as the last level of its topic says.</summary>
public enum TopicKind
{
    /// <summary>A stretch of raw load-cell samples; <c>frames</c> on the wire.</summary>
    Frames,

    /// <summary>An electronic ear-tag read; <c>tag</c> on the wire.</summary>
    Tag,

    /// <summary>A passage that the device has summed up itself; <c>passage</c> on the wire.</summary>
    Passage,

    /// <summary>The platform's word on itself, or its last will; <c>status</c> on the wire.</summary>
    Status,
}
