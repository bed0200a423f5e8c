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
