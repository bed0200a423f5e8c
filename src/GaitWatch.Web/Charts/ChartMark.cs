using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Something that happened to a flag, as a chart marks it.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">What.</param>
/// <param name="Words">What, in words.</param>
public sealed record ChartMark(DateTimeOffset At, ChartMarkKind Kind, string Words)
{
    internal static IEnumerable<ChartMark> Of(AlertView alert)
    {
        yield return new ChartMark(alert.OnsetAt, ChartMarkKind.Onset, "began");
        yield return new ChartMark(alert.RaisedAt, ChartMarkKind.Raised, "flagged");
        if (alert.ClosedAt is { } closed)
            yield return new ChartMark(closed, ChartMarkKind.Closed, $"closed: {AlertTexts.Reason(alert.CloseReason).ToLowerInvariant()}");
    }
}

/// <summary>What happened to a flag.</summary>
public enum ChartMarkKind
{
    /// <summary>The change began.</summary>
    Onset,

    /// <summary>It was raised.</summary>
    Raised,

    /// <summary>It was closed.</summary>
    Closed,
}
