namespace GaitWatch;

/// <summary>A setting that cannot be used.</summary>
/// <param name="Key">Its key, such as <c>GaitWatch:Mqtt:Port</c>.</param>
/// <param name="Found">What stands there; null when nothing does.</param>
/// <param name="Right">What would be right.</param>
internal sealed record SettingFault(string Key, string? Found, string Right)
{
    /// <summary>The fault as one sentence.</summary>
    public override string ToString() => Found is null ? $"{Key} is missing: {Right}" : $"{Key} is '{Found}': {Right}";
}
