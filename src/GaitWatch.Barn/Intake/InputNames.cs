using GaitWatch.Store;

namespace GaitWatch.Barn;

/// <summary>Names inputs for people who read a log.</summary>
internal static class InputNames
{
    /// <summary>What it is and how it is known.</summary>
    public static string Describe(this Input input) => input switch
    {
        FrameInput frame => $"frame of '{frame.Platform}' at {Rfc3339.Show(frame.Frame.T0)}",
        TagInput tag => $"tag {tag.Read.Eid} of '{tag.Platform}' at {Rfc3339.Show(tag.Read.At)}",
        DevicePassageInput passage => $"passage '{passage.Passage.DeviceId}' of '{passage.Platform}'",
        StatusInput status => $"status of '{status.Platform}'",
        WriteInput write => $"{write.Write.GetType().Name} at {Rfc3339.Show(write.Write.At)}",
        RejectedInput rejected => $"message on '{rejected.Topic}'",
        _ => input.GetType().Name,
    };
}
