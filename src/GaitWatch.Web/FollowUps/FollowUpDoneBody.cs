using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body that says a follow-up is done; it may be left out.</summary>
internal sealed record FollowUpDoneBody
{
    [Description("When it was done; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("Who did it, at most 100 characters.")]
    public string? By { get; init; }

    [Description("What was seen, at most 1,000 characters.")]
    public string? Note { get; init; }
}
