using System.Diagnostics.CodeAnalysis;

namespace GaitWatch.Barn;

/// <summary>
/// The topics of one farm. Devices write <c>gaitwatch/{farm}/{platform}/{kind}</c>; the service alone writes below
/// <c>alerts</c>, <c>platforms</c> and <c>trim-list</c>. Names in topics are percent-encoded (RFC 3986).
/// </summary>
public sealed class TopicScheme
{
    /// <summary>The first level of every topic.</summary>
    public const string Root = "gaitwatch";

    private const string Alerts = "alerts";
    private const string Platforms = "platforms";

    private readonly string _prefix;
    private readonly string _alertsPrefix;
    private readonly string _platformsPrefix;

    /// <summary>Makes the scheme of one farm.</summary>
    /// <param name="farm">The farm's name, not encoded.</param>
    public TopicScheme(string farm)
    {
        Farm = farm;
        _prefix = $"{Root}/{Uri.EscapeDataString(farm)}/";
        _alertsPrefix = $"{_prefix}{Alerts}/";
        _platformsPrefix = $"{_prefix}{Platforms}/";
        TrimList = $"{_prefix}trim-list";
    }

    /// <summary>The farm's name, not encoded.</summary>
    public string Farm { get; }

    /// <summary>The topic filter that holds everything of this farm.</summary>
    public string Everything => $"{_prefix}#";

    /// <summary>Where the next visit's list is published.</summary>
    public string TrimList { get; }

    /// <summary>Where a cow's worst open alert is published.</summary>
    public string AlertOf(string cow) => _alertsPrefix + Uri.EscapeDataString(cow);

    /// <summary>Where a platform's health is published.</summary>
    public string HealthOf(string platform) => _platformsPrefix + Uri.EscapeDataString(platform);

    /// <summary>Whether only the service itself writes to a topic.</summary>
    public bool IsOut(string topic) =>
        topic == TrimList
        || topic.StartsWith(_alertsPrefix, StringComparison.Ordinal)
        || topic.StartsWith(_platformsPrefix, StringComparison.Ordinal);

    /// <summary>Whether a topic claims to be one of GaitWatch's, in whatever spelling, so that it is kept even when it cannot be read.</summary>
    public static bool IsMeantForUs(string topic)
    {
        var first = topic.AsSpan();
        var slash = first.IndexOf('/');
        return (slash < 0 ? first : first[..slash]).Equals(Root, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Takes a device's topic apart.</summary>
    /// <param name="topic">The topic.</param>
    /// <param name="platform">The platform's name, decoded, when true is returned.</param>
    /// <param name="kind">What the message is, when true is returned.</param>
    /// <param name="fault">What was found and what would be right, when false is returned.</param>
    public bool TryRead(string topic, [NotNullWhen(true)] out string? platform, out TopicKind kind, [NotNullWhen(false)] out string? fault)
    {
        platform = null;
        kind = default;
        if (IsOut(topic))
        {
            fault = $"topic is '{Shorten(topic)}': only GaitWatch itself writes there; a device writes to {_prefix}{{platform}}/{{frames|tag|passage|status}}.";
            return false;
        }

        var levels = topic.Split('/');
        if (levels.Length != 4 || levels[0] != Root)
        {
            fault = $"topic is '{Shorten(topic)}': {_prefix}{{platform}}/{{frames|tag|passage|status}} is needed.";
            return false;
        }

        if (!topic.StartsWith(_prefix, StringComparison.Ordinal) && Decode(levels[1]) != Farm)
        {
            fault = $"farm in the topic is '{Shorten(levels[1])}': this is '{Farm}' (setting GaitWatch:Farm).";
            return false;
        }

        TopicKind? read = levels[3] switch
        {
            "frames" => TopicKind.Frames,
            "tag" => TopicKind.Tag,
            "passage" => TopicKind.Passage,
            "status" => TopicKind.Status,
            _ => null,
        };
        if (read is null)
        {
            fault = $"the topic's last level is '{Shorten(levels[3])}': frames, tag, passage or status.";
            return false;
        }

        platform = Decode(levels[2]);
        kind = read.Value;
        fault = null;
        return true;
    }

    private static string Decode(string level) => level.Contains('%') ? Uri.UnescapeDataString(level) : level;

    private static string Shorten(string text) => text.Length > 80 ? text[..80] + "…" : text;
}
