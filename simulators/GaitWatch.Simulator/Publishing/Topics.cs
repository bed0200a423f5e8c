namespace GaitWatch.Simulator;

/// <summary>The topics on which a platform speaks.</summary>
/// <param name="Farm">The farm's level of the topic.</param>
/// <param name="Platform">The platform's level of the topic.</param>
public sealed record Topics(string Farm = "home", string Platform = "parlour-exit")
{
    /// <summary>Raw samples.</summary>
    public string Frames => $"gaitwatch/{Farm}/{Platform}/frames";

    /// <summary>Ear tags.</summary>
    public string Tag => $"gaitwatch/{Farm}/{Platform}/tag";

    /// <summary>Passages summed up by the device.</summary>
    public string Passage => $"gaitwatch/{Farm}/{Platform}/passage";

    /// <summary>The device's state, retained.</summary>
    public string Status => $"gaitwatch/{Farm}/{Platform}/status";

    /// <summary>What is wrong with a level of a topic; null when it is right.</summary>
    /// <param name="level">The level's text.</param>
    public static string? Fault(string level) =>
        string.IsNullOrWhiteSpace(level) || level.AsSpan().ContainsAny("/+# ")
            ? $"'{level}': a level of a topic, not empty, without '/', '+', '#' and spaces, would be right."
            : null;
}
