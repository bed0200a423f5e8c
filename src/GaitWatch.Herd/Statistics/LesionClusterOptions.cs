namespace GaitWatch.Herd;

/// <summary>How clusters are looked for.</summary>
public sealed record LesionClusterOptions
{
    /// <summary>Length of the window that slides over the time, days. Chosen by us: about what lies between two visits.</summary>
    public int WindowDays { get; init; } = 14;

    /// <summary>How likely chance may bring one, over all pens and kinds looked at.</summary>
    public double Alpha { get; init; } = 0.05;

    /// <summary>Fewer are no cluster, however rare. Chosen by us.</summary>
    public int Fewest { get; init; } = 3;

    /// <summary>The same kind in the same cow within so many days is the same case.</summary>
    public int SameCaseDays { get; init; } = 28;
}
