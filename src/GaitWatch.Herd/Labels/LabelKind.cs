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
