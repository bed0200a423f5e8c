using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Findings and how treated feet recover.
public sealed partial class BarnReader
{
    // How a cow walks when sound is told from so many days before onset.
    private static readonly TimeSpan SoundBefore = TimeSpan.FromDays(60);

    // A foot treated longer ago is followed no more in lists over the herd: it was judged at 35 days, and again by any new alert.
    private static readonly TimeSpan FollowedFor = TimeSpan.FromDays(120);

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
        return [.. (await RecoveriesAtAsync(context, await NowAsync(context, cancellation), cow, null, cancellation)).OrderBy(recovery => recovery.TreatedAt)];
    }

    /// <summary>One assessment per foot of the herd that was treated in the last 120 days.</summary>
    public async Task<IReadOnlyList<RecoveryAssessment>> RecoveriesAsync(CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        return await RecoveriesAtAsync(context, await NowAsync(context, cancellation), null, null, cancellation);
    }

    private async Task<ImmutableArray<RecoveryAssessment>> RecoveriesAtAsync(
        BarnContext context, Now now, string? cow, DateTimeOffset? past, CancellationToken cancellation, bool everTreated = false)
    {
        var asOf = past ?? now.AsOf;
        var findings = now.Findings.Findings.Where(finding => finding.At <= asOf && (cow is null || finding.Cow == cow)).ToArray();
        if (findings.Length == 0)
            return [];
        var alerts = await AlertsAtAsync(context, past, cancellation);
        var feet = TreatedFeet.Of(findings, alerts, FarmRemovals.Of(now.Writes.Where(write => write.At <= asOf), findings)).Where(foot => cow is not null || everTreated || foot.TreatedAt > asOf - FollowedFor);
        var recoveries = ImmutableArray.CreateBuilder<RecoveryAssessment>();
        foreach (var ofCow in feet.GroupBy(foot => foot.Cow, StringComparer.Ordinal))
        {
            var passages = await AssessedAsync(context, ofCow.Key, ofCow.Min(foot => foot.OnsetAt) - SoundBefore, asOf, cancellation);
            foreach (var foot in ofCow)
            {
                var (readings, baseline) = NormalBeforeOnset.Of(foot.Foot, foot.OnsetAt, passages);
                recoveries.Add(RecoveryAssessor.Assess(foot, readings, baseline, asOf, new RecoveryOptions { TimeZone = _options.Calendar.Zone }));
            }
        }

        return recoveries.ToImmutable();
    }

    private static async Task<List<AssessedPassage>> AssessedAsync(
        BarnContext context, string cow, DateTimeOffset from, DateTimeOffset until, CancellationToken cancellation)
    {
        await context.Database.OpenConnectionAsync(cancellation);
        using var query = new PreparedCommand(
            context.Database.GetDbConnection(),
            $"""
            SELECT {AssessmentColumns.NamesOf("a")}, p."Lf_Share", p."Rf_Share", p."Lh_Share", p."Rh_Share"
            FROM assessments a JOIN passages p ON p."Id" = a."PassageId" WHERE a."Cow" = @0 AND a."At" >= @1 AND a."At" <= @2 ORDER BY a."At", a."PassageId"
            """,
            3);
        using var rows = query.Query(cow, from.ToMs(), until.ToMs());
        var at = AssessmentColumns.Count;
        var found = new List<AssessedPassage>();
        while (await rows.ReadAsync(cancellation))
        {
            found.Add(new AssessedPassage(
                new PerLeg<double>(rows.GetDouble(at), rows.GetDouble(at + 1), rows.GetDouble(at + 2), rows.GetDouble(at + 3)), AssessmentColumns.Read(rows)));
        }

        return found;
    }
}
