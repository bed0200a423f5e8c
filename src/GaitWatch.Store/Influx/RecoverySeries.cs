namespace GaitWatch.Store;

/// <summary>
/// Tells how treated feet fare. Recovery is worked out when it is asked for, not kept; here it is asked for now and then, and
/// what differs from what was last told is sent.
/// </summary>
/// <remarks>Not safe for use by several threads at once.</remarks>
internal sealed class RecoverySeries(BarnStore store)
{
    private readonly HashSet<(string Finding, int Versions)> _looked = [];
    private long _folded = -1;

    /// <summary>Brings what is told up to the state.</summary>
    /// <exception cref="StoreUnavailableException">Nothing was told.</exception>
    public async Task RefreshAsync(CancellationToken cancellation)
    {
        var folded = store.Progress.Folded;
        if (folded == _folded)
            return;
        var told = await store.Series.ImagesAsync(StateChange.RecoveryEntity(""), cancellation);
        var recoveries = (await store.Reader.RecoveriesAsync(cancellation)).ToDictionary(recovery => recovery.FindingId, StringComparer.Ordinal);
        var log = await store.Reader.FindingsAsync(cancellation);

        // Feet treated so long ago that the herd's list leaves them out, and never told: each cow is asked once.
        var missing = log.Findings
            .Where(finding => !recoveries.ContainsKey(finding.Id) && !told.Contains(StateChange.RecoveryEntity(finding.Id)))
            .Where(finding => _looked.Add((finding.Id, log.Find(finding.Id)!.Versions.Length)))
            .Select(finding => finding.Cow)
            .ToHashSet(StringComparer.Ordinal);
        foreach (var cow in missing)
        {
            foreach (var recovery in await store.Reader.RecoveriesOfAsync(cow, cancellation))
                recoveries[recovery.FindingId] = recovery;
        }

        await using var change = await store.BeginAsync(cancellation);
        change.WriteRecoveries(recoveries.Values.OrderBy(recovery => recovery.TreatedAt).ThenBy(recovery => recovery.FindingId, StringComparer.Ordinal));
        await change.CommitAsync(await change.FoldedAsync());
        _folded = folded;
    }

    /// <summary>Everything is to be told again.</summary>
    public void Forget()
    {
        _looked.Clear();
        _folded = -1;
    }
}
