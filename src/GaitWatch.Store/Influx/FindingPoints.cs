using GaitWatch.Gait;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>The point of one finding. Who entered it, its note and withdrawal dates stay in the store: a view for many eyes has no need of them.</summary>
internal static class FindingPoints
{
    public static IReadOnlyList<SeriesPoint> Of(string farm, Finding finding, string? pen) =>
    [
        new PointBuilder("finding", finding.At.ToMs(), farm)
            .Tag("finding", finding.Id)
            .Tag("cow", finding.Cow)
            .Tag("pen", pen)
            .Tag("foot", finding.Foot.WireName())
            .Tag("lesion", finding.Lesion.WireName())
            .Field("block", finding.Did(FindingAction.Block))
            .Field("wrap", finding.Did(FindingAction.Wrap))
            .Field("refer_to_vet", finding.Did(FindingAction.ReferToVet) || finding.Signs.Length > 0)
            .Field("claw", finding.Claw?.WireName())
            .Field("zone", (long?)finding.Zone)
            .Field("severity", (long?)finding.Severity)
            .Field("m_stage", finding.MStage?.WireName())
            .Field("locomotion_score", (long?)finding.LocomotionScore)
            .Field("actions", string.Join(' ', finding.Actions.Select(action => action.WireName())))
            .Field("signs", string.Join(' ', finding.Signs.Select(sign => sign.WireName())))
            .Field("foreign_body", finding.ForeignBody?.Kind)
            .Build(),
    ];
}
