using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body that closes an alert. Only the reason is required.</summary>
internal sealed record CloseAlertBody
{
    [Description("When it was closed; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("Why: lifted-nothing-found, seen-walking-sound, treated-by-farm, wrong-cow, left-herd or other.")]
    public required string Reason { get; init; }

    [Description("What else is to be said, at most 1,000 characters.")]
    public string? Note { get; init; }

    [Description("Who closes it, at most 100 characters.")]
    public string? By { get; init; }
}
