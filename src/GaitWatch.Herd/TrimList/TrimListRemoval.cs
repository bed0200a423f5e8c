namespace GaitWatch.Herd;

/// <summary>A cow that a person took off a visit's list.</summary>
/// <param name="Cow">Her number.</param>
/// <param name="Reason">Why she would be on it; null when nothing asks for her now.</param>
/// <param name="Why">Why she was taken off.</param>
/// <param name="By">Who; may be empty.</param>
public sealed record TrimListRemoval(string Cow, TrimListReason? Reason, string Why, string By);
