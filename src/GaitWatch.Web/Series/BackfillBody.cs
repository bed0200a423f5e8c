using System.ComponentModel;

namespace GaitWatch.Web;

/// <summary>The body that starts a backfill; it may be left out.</summary>
internal sealed record BackfillBody
{
    [Description("From when on: a date (midnight in the farm's zone) or an RFC 3339 instant; default: everything that is kept.")]
    public string? Since { get; init; }
}
