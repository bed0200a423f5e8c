using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Findings and how treated feet recover.
public sealed partial class BarnReader
{
    // A foot treated longer ago is followed no more in lists over the herd: it was judged at 35 days, and again by any new alert.
    private static readonly TimeSpan FollowedFor = TimeSpan.FromDays(new RecoveryOptions().FollowedDays);

    /// <summary>Every finding with its earlier wordings.</summary>
    public async Task<FindingLog> FindingsAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return (await BookAsync(context, cancellation)).Findings;
    }

    /// <summary>One assessment per treated foot of a cow, oldest treatment first.</summary>
    public async Task<IReadOnlyList<RecoveryAssessment>> RecoveriesOfAsync(string cow, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        if (!await AreKeptAsync(context, cancellation))
            return [.. (await JudgeAsync(context, now, cow, null, true, cancellation)).OrderBy(recovery => recovery.TreatedAt)];
        var ofCow = await context.Recoveries.Where(row => row.Cow == cow).OrderBy(row => row.TreatedAt).ToListAsync(cancellation);
        return [.. ofCow.Select(row => RecoveryColumns.Read(row.Body, row.Days))];
    }

    /// <summary>One assessment per foot of the herd that was treated in the last 120 days.</summary>
    public async Task<IReadOnlyList<RecoveryAssessment>> RecoveriesAsync(CancellationToken cancellation = default) =>
        await RecoveriesAsync(await NowAsync(cancellation), everTreated: false, cancellation);

    /// <summary>The same with every day's mean, for their curves.</summary>
    public async Task<IReadOnlyList<RecoveryAssessment>> RecoveriesByDayAsync(CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return await OnceAsync<IReadOnlyList<RecoveryAssessment>>(
            now, "recoveries-by-day", null,
            async context =>
            {
                if (!await AreKeptAsync(context, CancellationToken.None))
                    return await JudgeAsync(context, now, null, null, false, CancellationToken.None);
                var since = (now.AsOf - FollowedFor).ToMs();
                return [.. (await context.Recoveries.Where(row => row.TreatedAt > since).ToListAsync(CancellationToken.None)).Select(row => RecoveryColumns.Read(row.Body, row.Days))];
            },
            cancellation);
    }

    // As they stand now they are kept, without their days; those of another version of the method are judged anew.
    private Task<ImmutableArray<RecoveryAssessment>> RecoveriesAsync(Now now, bool everTreated, CancellationToken cancellation) => OnceAsync<ImmutableArray<RecoveryAssessment>>(
        now, "recoveries", everTreated,
        async context =>
        {
            if (!await AreKeptAsync(context, CancellationToken.None))
                return await JudgeAsync(context, now, null, null, everTreated, CancellationToken.None);
            var since = everTreated ? long.MinValue : (now.AsOf - FollowedFor).ToMs();
            var kept = await context.Recoveries.Where(row => row.TreatedAt > since).Select(row => new { row.FindingId, row.Body }).ToListAsync(CancellationToken.None);
            if (everTreated)
                _recoveryBodies.Keep([.. kept.Select(row => row.FindingId)]);
            return [.. kept.Select(row => _recoveryBodies.Read(row.FindingId, row.Body))];
        },
        cancellation);

    private static Task<bool> AreKeptAsync(BarnContext context, CancellationToken cancellation) =>
        context.Marks.AnyAsync(row => row.Name == StateChange.RecoveriesMark && row.Value == RecoveryAssessor.Version, cancellation);

    // As they stood in the past they are judged from what was known then.
    private async Task<ImmutableArray<RecoveryAssessment>> JudgeAsync(
        BarnContext context, Now now, string? cow, DateTimeOffset? past, bool everTreated, CancellationToken cancellation)
    {
        var since = everTreated ? long.MinValue : ((past ?? now.AsOf) - FollowedFor).ToMs();
        var asOf = past ?? now.AsOf;
        var findings = now.Findings.Findings.Where(finding => finding.At <= asOf && (cow is null || finding.Cow == cow)).ToArray();
        if (findings.Length == 0)
            return [];
        var alerts = await AlertsAtAsync(context, now, past, cancellation);
        var options = new RecoveryOptions { TimeZone = _options.Calendar.Zone };
        var feet = TreatedFeet.Of(findings, alerts, FarmRemovals.Of(now.Writes.Where(write => write.At <= asOf), findings)).Where(foot => foot.TreatedAt.ToMs() > since);
        var recoveries = ImmutableArray.CreateBuilder<RecoveryAssessment>();
        foreach (var ofCow in feet.GroupBy(foot => foot.Cow, StringComparer.Ordinal))
        {
            var passages = await AssessedAsync(context, ofCow.Key, ofCow.Min(foot => foot.OnsetAt) - TreatedFeet.SoundBefore, asOf, cancellation);
            recoveries.AddRange(ofCow.Select(foot => RecoveryAssessor.Assess(foot, passages, asOf, options)));
        }

        return recoveries.ToImmutable();
    }

    private static async Task<List<AssessedPassage>> AssessedAsync(
        BarnContext context, string cow, DateTimeOffset from, DateTimeOffset until, CancellationToken cancellation)
    {
        await context.Database.OpenConnectionAsync(cancellation);
        using var query = new PreparedCommand(context.Database.GetDbConnection(), AssessedPassages.Sql, 3);
        using var rows = query.Query(cow, from.ToMs(), until.ToMs());
        var found = new List<AssessedPassage>();
        while (await rows.ReadAsync(cancellation))
            found.Add(AssessedPassages.Read(rows));
        return found;
    }
}
