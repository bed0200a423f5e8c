using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>The points of one passage: the crossing, each leg, and her balances. All at the first contact.</summary>
internal static class PassagePoints
{
    public static IReadOnlyList<SeriesPoint> Of(string farm, Passage passage, string? cow, PassageAssessment? told)
    {
        var reasons = passage.Reasons.Concat(told?.Reasons ?? []).Order().ToArray();
        var accepted = reasons.Length == 0;
        var at = passage.StartedAt.ToMs();

        PointBuilder Point(string measurement) => new PointBuilder(measurement, at, farm)
            .Tag("platform", passage.Platform).Tag("cow", cow).Tag("quality", accepted ? "accepted" : "rejected");

        var points = new List<SeriesPoint>(6)
        {
            Point("passage")
                .Tag("reason", accepted ? "none" : reasons[0].WireName())
                .Field("passage_id", passage.Id)
                .Field("accepted", accepted)
                .Field("tagged", passage.Eid is not null)
                .Field("duration_seconds", (passage.EndedAt - passage.StartedAt).TotalSeconds)
                .Field("weight_kg", passage.WeightKg)
                .Field("stride_seconds", passage.StrideSeconds)
                .Field("speed_metres_per_second", passage.SpeedMetresPerSecond)
                .Field("left_ends_percent", passage.LeftEnds?.Percent)
                .Field("right_ends_percent", passage.RightEnds?.Percent)
                .Build(),
        };
        foreach (var leg in Legs.All)
        {
            var load = passage.Legs[leg];
            var expected = told?.ExpectedShare?[leg];
            points.Add(Point("leg")
                .Tag("leg", leg.WireName())
                .Field("footfalls", (long)load.Footfalls)
                .Field("load_kg", load.LoadKg)
                .Field("share", load.Share)
                .Field("share_error", load.ShareError)
                .Field("peak_kg", load.PeakKg)
                .Field("stance_seconds", load.StanceSeconds)
                .Field("expected_share", expected)
                .Field("share_spread", told?.ShareSpread?[leg])
                .Field("load_drop_percent", load.Share is { } share && expected is > 0 ? 100 * (1 - (share / expected)) : null)
                .Field("evidence", told?.OneLegEvidence[leg])
                .Build());
        }

        if (told is not null)
        {
            points.Add(Point("balance")
                .Field("baseline", BaselineWord(told.Baseline))
                .Field("residual_fore_hind", told.Residual?.ForeHind)
                .Field("residual_fore", told.Residual?.Fore)
                .Field("residual_hind", told.Residual?.Hind)
                .Field("common_fore_hind", told.CommonMovement?.ForeHind)
                .Field("common_fore", told.CommonMovement?.Fore)
                .Field("common_hind", told.CommonMovement?.Hind)
                .Field("both_hind_evidence", told.BothHindEvidence)
                .Field("both_fore_evidence", told.BothForeEvidence)
                .Build());
        }

        return points;
    }

    private static string BaselineWord(BaselineState state) => state switch
    {
        BaselineState.Learning => "learning",
        BaselineState.Watching => "watching",
        BaselineState.Frozen => "frozen",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "Not a state of a baseline."),
    };
}
