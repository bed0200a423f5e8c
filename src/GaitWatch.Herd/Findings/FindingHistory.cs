using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>A finding with every wording it has had.</summary>
/// <param name="Current">How it reads now.</param>
/// <param name="Versions">All wordings, oldest first; the last is the current one.</param>
/// <param name="Conflicts">Other bodies that were sent under the same id and were not corrections: kept, not counted.</param>
public sealed record FindingHistory(Finding Current, ImmutableArray<FindingVersion> Versions, ImmutableArray<FindingVersion> Conflicts)
{
    /// <summary>Since when it is taken back and counts no more; null while it counts.</summary>
    public DateTimeOffset? WithdrawnAt => Versions[^1] is { IsWithdrawal: true, EnteredAt: var at } ? at : null;
}
