namespace GaitWatch.Herd;

/// <summary>Half of a day. Wire: <c>am</c>, <c>pm</c>.</summary>
public enum VisitHalf
{
    /// <summary>The morning.</summary>
    Am,

    /// <summary>The afternoon.</summary>
    Pm,
}
