using System.Collections.Immutable;
using GaitWatch.Gait;

namespace GaitWatch.Herd;

/// <summary>
/// Every finding of the farm, folded from what was written. It depends on the set of writes alone, not on their order or the
/// number of copies.
/// </summary>
public sealed class FindingLog
{
    private readonly ImmutableDictionary<string, FindingHistory> _byId;
    private readonly ILookup<string, Finding> _byCow;

    private FindingLog(ImmutableDictionary<string, FindingHistory> byId)
    {
        _byId = byId;
        Findings = [.. byId.Values.Where(history => history.WithdrawnAt is null).Select(history => history.Current).Order(Finding.ByTime)];
        _byCow = Findings.ToLookup(finding => finding.Cow, StringComparer.Ordinal);
    }

    /// <summary>A log without findings.</summary>
    public static FindingLog Empty { get; } = Of([]);

    /// <summary>Every finding that counts, as it reads now, oldest first.</summary>
    public ImmutableArray<Finding> Findings { get; }

    /// <summary>
    /// Folds what was written. Of the other writes only registrations matter: a finding of a cow that was known by her tag alone is
    /// that of the cow to whom the tag was given since.
    /// </summary>
    public static FindingLog Of(IEnumerable<FarmWrite> writes)
    {
        var all = writes as IReadOnlyCollection<FarmWrite> ?? [.. writes];
        var register = new Lazy<HerdRegister>(() => new HerdRegister(all.OfType<RegisterWrite>().Select(write => write.Registration)));
        var versions = all.Select(write => write switch
        {
            FindingWrite first => new FindingVersion(Named(first.Finding), first.EnteredAt, IsCorrection: false),
            FindingCorrectionWrite correction => new FindingVersion(Named(correction.Finding), correction.EnteredAt, IsCorrection: true),
            FindingWithdrawalWrite withdrawal => new FindingVersion(Named(withdrawal.Finding), withdrawal.EnteredAt, IsCorrection: true) { IsWithdrawal = true },
            _ => null,
        });

        Finding Named(Finding finding) => Eid.TryParse(finding.Cow, out _, out _) && register.Value.Meant(finding.Cow, finding.At) is var cow && cow != finding.Cow
            ? finding with { Cow = cow }
            : finding;

        return new FindingLog(versions.OfType<FindingVersion>()
            .GroupBy(version => version.Finding.Id, StringComparer.Ordinal)
            .ToImmutableDictionary(group => group.Key, History, StringComparer.Ordinal));
    }

    /// <summary>A finding and its earlier wordings, one that was taken back too; null when its id is not known.</summary>
    public FindingHistory? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>Findings of one cow as they read now, oldest first.</summary>
    public IEnumerable<Finding> OfCow(string cow) => _byCow[cow];

    /// <summary>
    /// What to do with a finding that is sent as new. A body that once stood under this id is known too: the sender may not have
    /// heard of a correction.
    /// </summary>
    public FindingVerdict Judge(Finding sent)
    {
        if (Find(sent.Id) is not { } history)
            return FindingVerdict.New;
        return history.Versions.Any(version => version.Finding == sent) ? FindingVerdict.Known : FindingVerdict.Conflict;
    }

    private static FindingHistory History(IEnumerable<FindingVersion> all)
    {
        var ordered = all.Distinct().OrderBy(version => version.EnteredAt).ThenBy(version => version.Finding.Canonical(), StringComparer.Ordinal)
            .ThenBy(version => version.IsWithdrawal).ToArray();
        var firsts = ordered.Where(version => !version.IsCorrection).DistinctBy(version => version.Finding).ToArray();
        var versions = firsts.Take(1).Concat(ordered.Where(version => version.IsCorrection)).ToList();
        // A correction sent again, with nothing between, is the same correction.
        for (var i = versions.Count - 1; i > 0; i--)
        {
            if (versions[i].Finding == versions[i - 1].Finding && versions[i].IsWithdrawal == versions[i - 1].IsWithdrawal)
                versions.RemoveAt(i);
        }

        return new FindingHistory(versions[^1].Finding, [.. versions], [.. firsts.Skip(1)]);
    }
}
