using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>What lifting the foot said of an alert.</summary>
public enum LabelKind
{
    /// <summary>On the named leg was what makes a cow lame. Wire: <c>right</c>.</summary>
    Right,

    /// <summary>On the named leg was a lesion, of the kind that seldom makes a cow lame. Wire: <c>minor</c>.</summary>
    Minor,

    /// <summary>What makes a cow lame was on another leg. Wire: <c>other-leg</c>.</summary>
    OtherLeg,

    /// <summary>The named foot was lifted and nothing was found. Wire: <c>nothing-found</c>.</summary>
    NothingFound,
}

/// <summary>Names of labels on the wire.</summary>
public static class LabelNames
{
    /// <summary>The label on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no label.</exception>
    public static string WireName(this LabelKind kind) => kind switch
    {
        LabelKind.Right => "right",
        LabelKind.Minor => "minor",
        LabelKind.OtherLeg => "other-leg",
        LabelKind.NothingFound => "nothing-found",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a label."),
    };
}

/// <summary>An alert whose foot was lifted.</summary>
/// <param name="Alert">The alert.</param>
/// <param name="Kind">What lifting said.</param>
/// <param name="LiftedAt">When.</param>
/// <param name="FindingIds">The findings that say so; empty when it was closed by hand after lifting.</param>
public sealed record AlertLabel(Alert Alert, LabelKind Kind, DateTimeOffset LiftedAt, ImmutableArray<string> FindingIds);
