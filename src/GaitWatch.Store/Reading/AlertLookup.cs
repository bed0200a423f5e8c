namespace GaitWatch.Store;

/// <summary>What an alert's id leads to.</summary>
/// <param name="Alert">The alert; null when the id is no more or never was.</param>
/// <param name="MovedTo">The id of its successor, when late data gave it another.</param>
/// <param name="Withdrawn">Whether late data took it back.</param>
public sealed record AlertLookup(AlertView? Alert, string? MovedTo, bool Withdrawn);
