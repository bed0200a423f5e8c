namespace GaitWatch.Herd;

/// <summary>A day, or half of one, on which the trimmer comes.</summary>
/// <param name="Date">The farm's day.</param>
public sealed record Visit(DateOnly Date)
{
    /// <summary>Which half of the day; null for the whole.</summary>
    public VisitHalf? Half { get; init; }

    /// <summary>Who comes; may be empty.</summary>
    public string Trimmer { get; init; } = "";

    /// <summary>How many cows there is time for; null when not said.</summary>
    public int? Places { get; init; }
}

/// <summary>Half of a day. Wire: <c>am</c>, <c>pm</c>.</summary>
public enum VisitHalf
{
    /// <summary>The morning.</summary>
    Am,

    /// <summary>The afternoon.</summary>
    Pm,
}

/// <summary>Names of <see cref="VisitHalf"/> on the wire.</summary>
public static class VisitNames
{
    /// <summary>The half on the wire.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no half.</exception>
    public static string WireName(this VisitHalf half) => half switch
    {
        VisitHalf.Am => "am",
        VisitHalf.Pm => "pm",
        _ => throw new ArgumentOutOfRangeException(nameof(half), half, "Not a half of the contract."),
    };
}
