namespace GaitWatch.Lameness;

/// <summary>What kind of change an alert is about. On the wire <c>one-leg</c>, <c>both-hind</c>, <c>both-fore</c>.</summary>
public enum AlertPattern
{
    /// <summary>One leg carries less than it used to.</summary>
    OneLeg,

    /// <summary>Both hind legs carry less: weight has moved forward.</summary>
    BothHind,

    /// <summary>Both fore legs carry less: weight has moved back.</summary>
    BothFore,
}
