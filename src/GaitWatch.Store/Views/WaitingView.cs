using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>How long something takes, as the statistics show it (Kaplan-Meier; what has not happened yet is censored).</summary>
/// <param name="Count">How many were watched.</param>
/// <param name="Happened">How many it happened to.</param>
/// <param name="MedianDays">Days until it has happened to half of them; null while it has not.</param>
/// <param name="Interval">95 % interval of the median, days; an end the data do not bound is null.</param>
public sealed record WaitingView(int Count, int Happened, double? MedianDays, double?[] Interval)
{
    /// <summary>How a curve looks on the wire.</summary>
    public static WaitingView OfCurve(KaplanMeier curve)
    {
        var (lower, upper) = curve.MedianInterval;
        return new WaitingView(curve.Count, curve.Events, curve.MedianDays, [lower, upper]);
    }
}
