using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Something that happened to a flag, as a chart marks it.</summary>
/// <param name="At">When.</param>
/// <param name="Kind">What.</param>
public sealed record ChartMark(DateTimeOffset At, ChartMarkKind Kind)
{
    internal static IEnumerable<ChartMark> Of(AlertView alert)
    {
        yield return new ChartMark(alert.OnsetAt, ChartMarkKind.Onset);
        yield return new ChartMark(alert.RaisedAt, ChartMarkKind.Raised);
        if (alert.ClosedAt is { } closed)
            yield return new ChartMark(closed, ChartMarkKind.Closed);
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
