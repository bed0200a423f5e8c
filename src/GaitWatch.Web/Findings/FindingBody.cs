using System.ComponentModel;
using GaitWatch.Herd;

namespace GaitWatch.Web;

/// <summary>The body of a finding: as the contract writes it, and when it was entered.</summary>
internal sealed record FindingBody : FindingForm
{
    [Description("When it was entered or corrected; default: arrival. Of several corrections the latest holds.")]
    public DateTimeOffset? EnteredAt { get; init; }
}
