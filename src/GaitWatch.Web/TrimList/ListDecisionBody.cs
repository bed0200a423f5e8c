using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body that puts a cow on a visit's list by hand, or takes her off it.</summary>
internal sealed record ListDecisionBody
{
    [Description("When it was decided; default: arrival.")]
    public DateTimeOffset? At { get; init; }

    [Description("pinned: she is to be on the list; removed: she is not.")]
    public required string Hand { get; init; }

    [Description("Why, at most 200 characters; it stands beside her.")]
    public required string Reason { get; init; }

    [Description("The foot to lift first: lf, rf, lh or rh; null when not said.")]
    public string? Foot { get; init; }

    [Description("Who decided it, at most 100 characters.")]
    public string? By { get; init; }
}
