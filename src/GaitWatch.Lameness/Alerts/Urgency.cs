namespace GaitWatch.Lameness;

/// <summary>How soon an alert asks for action. On the wire <c>today</c>, <c>next-visit</c>, <c>watch</c>. The lowest number is the most urgent.</summary>
public enum Urgency
{
    /// <summary>Looked at today, foot lifted within 48 hours.</summary>
    Today,

    /// <summary>The trimmer's next visit will do.</summary>
    NextVisit,

    /// <summary>No action; raised if it worsens.</summary>
    Watch,
}
