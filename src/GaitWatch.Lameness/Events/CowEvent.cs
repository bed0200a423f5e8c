using GaitWatch.Gait;

namespace GaitWatch.Lameness;

/// <summary>Something known of a cow that changes what is expected of her: it explains a change, so that it raises no alert.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When it happened.</param>
public abstract record CowEvent(string Cow, DateTimeOffset At);

/// <summary>She calved.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
public sealed record Calved(string Cow, DateTimeOffset At) : CowEvent(Cow, At);

/// <summary>She was dried off.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
public sealed record DriedOff(string Cow, DateTimeOffset At) : CowEvent(Cow, At);

/// <summary>She left the herd; what is open of hers is closed.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
public sealed record LeftHerd(string Cow, DateTimeOffset At) : CowEvent(Cow, At);

/// <summary>She wears another tag from now on.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
public sealed record TagReplaced(string Cow, DateTimeOffset At) : CowEvent(Cow, At);

/// <summary>A foot was treated or trimmed: the next days' gait is expected to change.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
/// <param name="Foot">The foot; null when all four were trimmed.</param>
/// <param name="BlockOn">Whether a block was put on.</param>
/// <param name="BlockOff">Whether a block was taken off or lost.</param>
public sealed record FootTreated(string Cow, DateTimeOffset At, Leg? Foot, bool BlockOn, bool BlockOff) : CowEvent(Cow, At);

/// <summary>A person closed an alert. It names cow, pattern and leg rather than the alert's id, so that it survives a revision.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="At">When.</param>
/// <param name="Pattern">The alert's pattern.</param>
/// <param name="Leg">The alert's leg.</param>
/// <param name="Reason">Why.</param>
/// <param name="Note">What the person wrote; may be empty.</param>
/// <param name="By">Who; may be empty.</param>
public sealed record AlertClosedByHand(
    string Cow, DateTimeOffset At, AlertPattern Pattern, Leg Leg, AlertCloseReason Reason, string Note, string By) : CowEvent(Cow, At);
