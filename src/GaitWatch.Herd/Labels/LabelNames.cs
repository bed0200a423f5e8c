namespace GaitWatch.Herd;

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
