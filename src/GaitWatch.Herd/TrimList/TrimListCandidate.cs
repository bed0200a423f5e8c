namespace GaitWatch.Herd;

/// <summary>A reason to have a cow on the list.</summary>
/// <param name="Entry">The entry it makes.</param>
/// <param name="Sentence">What else it asks for when another reason leads; empty when nothing.</param>
/// <param name="KnownAt">When it came to be known; null for what follows from dates.</param>
internal sealed record TrimListCandidate(TrimListEntry Entry, string Sentence, DateTimeOffset? KnownAt);
