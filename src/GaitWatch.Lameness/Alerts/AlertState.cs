namespace GaitWatch.Lameness;

/// <summary>Where an alert stands. On the wire <c>open</c>, <c>listed</c>, <c>examined</c>, <c>closed</c>.</summary>
public enum AlertState
{
    /// <summary>Nobody has acted on it yet.</summary>
    Open,

    /// <summary>She is on a visit's list.</summary>
    Listed,

    /// <summary>The foot was looked at; her load is not yet back to normal.</summary>
    Examined,

    /// <summary>Over.</summary>
    Closed,
}
