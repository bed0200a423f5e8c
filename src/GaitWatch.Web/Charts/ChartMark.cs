using GaitWatch.Herd;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>Something that happened to a leg, as a chart marks it.</summary>
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

    internal static ChartMark Of(Finding finding) => new(finding.At, ChartMarkKind.Found);
}

/// <summary>What happened to a leg.</summary>
public enum ChartMarkKind
{
    /// <summary>The change began.</summary>
    Onset,

    /// <summary>A flag was raised.</summary>
    Raised,

    /// <summary>A flag was closed.</summary>
    Closed,

    /// <summary>The foot was in hand at the chute.</summary>
    Found,

    /// <summary>It was shown to carry her normal again.</summary>
    Recovered,
}
