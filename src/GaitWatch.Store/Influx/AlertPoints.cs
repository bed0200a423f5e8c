using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

/// <summary>The points of one alert: one for each step of its life.</summary>
internal static class AlertPoints
{
    public static IReadOnlyList<SeriesPoint> Of(string farm, IReadOnlyList<AlertChange> steps, string? pen) =>
        [.. steps.Select(step => Of(farm, step, pen)).GroupBy(point => point.Key(), StringComparer.Ordinal).Select(same => same.Last())];

    private static SeriesPoint Of(string farm, AlertChange step, string? pen)
    {
        var alert = step.Alert;
        return new PointBuilder("alert", step.At.ToMs(), farm)
            .Tag("alert", alert.Id)
            .Tag("cow", alert.Cow)
            .Tag("pen", pen)
            .Tag("pattern", alert.Pattern.WireName())
            .Tag("leg", alert.Leg.WireName())
            .Tag("step", StepWord(step.Kind))
            .Field("open", alert.State != AlertState.Closed)
            .Field("state", alert.State.WireName())
            .Field("urgency", alert.Urgency.WireName())
            .Field("load_drop_percent", alert.LoadDropPercent)
            .Field("load_drop_lower_percent", alert.LoadDropLowerPercent)
            .Field("load_drop_upper_percent", alert.LoadDropUpperPercent)
            .Field("leg_probability", alert.LegProbability[alert.Leg])
            .Field("days_since_onset", (step.At - alert.OnsetAt).TotalDays)
            .Field("close_reason", alert.CloseReason?.WireName())
            .Field("explanation", alert.Explanation)
            .Build();
    }

    private static string StepWord(AlertChangeKind kind) => kind switch
    {
        AlertChangeKind.Raised => "raised",
        AlertChangeKind.Updated => "updated",
        AlertChangeKind.Worsened => "worsened",
        AlertChangeKind.Closed => "closed",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a step of an alert's life."),
    };
}
