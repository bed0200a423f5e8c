using System.Collections.Immutable;
using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>Everything that people entered, and what was gathered from it once for every reader.</summary>
/// <param name="Writes">All of it, in order of arrival.</param>
/// <param name="Register">The register.</param>
/// <param name="Findings">Every finding.</param>
/// <param name="Visits">Every visit.</param>
/// <param name="NewestAt">The newest instant any of it is about; null when there is nothing.</param>
internal sealed record Book(ImmutableArray<FarmWrite> Writes, HerdRegister Register, FindingLog Findings, VisitBook Visits, DateTimeOffset? NewestAt)
{
    /// <summary>Nothing was entered.</summary>
    public static Book Empty { get; } = new([], HerdRegister.Empty, FindingLog.Empty, VisitBook.Empty, null);

    /// <summary>With what came since; of the parts only those that something came of are made again.</summary>
    public Book With(IReadOnlyCollection<FarmWrite> fresh)
    {
        if (fresh.Count == 0)
            return this;
        var writes = Writes.AddRange(fresh);
        var registered = fresh.OfType<RegisterWrite>().Any();
        return new Book(
            writes,
            registered ? new HerdRegister(writes.OfType<RegisterWrite>().Select(write => write.Registration)) : Register,
            registered || fresh.Any(write => write is FindingWrite or FindingCorrectionWrite or FindingWithdrawalWrite) ? FindingLog.Of(writes) : Findings,
            fresh.Any(write => write is VisitWrite or VisitMoveWrite or VisitCancelWrite) ? VisitBook.Of(writes) : Visits,
            fresh.Select(write => (DateTimeOffset?)write.At).Append(NewestAt).Max());
    }
}
