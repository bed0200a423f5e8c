using GaitWatch.Gait;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// Passages, what they told, and the frames behind them.
public sealed partial class BarnReader
{
    /// <summary>A cow's passages that started in [from, to), oldest first, rejected ones too.</summary>
    public Task<IReadOnlyList<PassageView>> PassagesOfAsync(
        string cow, DateTimeOffset? from, DateTimeOffset? to, Page page, CancellationToken cancellation = default) =>
        PassagesAsync(rows => rows.Where(row => row.Cow == cow), from, to, null, page, cancellation);

    /// <summary>How many passages of a cow started in [from, to), and the newest of them, newest first, rejected ones too.</summary>
    /// <param name="cow">Her number.</param>
    /// <param name="from">From when on; null for all.</param>
    /// <param name="to">Until when; null for all.</param>
    /// <param name="count">How many of the newest are wanted.</param>
    /// <param name="cancellation">Gives up.</param>
    public async Task<(int All, IReadOnlyList<PassageView> Newest)> NewestPassagesOfAsync(
        string cow, DateTimeOffset? from, DateTimeOffset? to, int count, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var (since, until) = (from?.ToMs() ?? long.MinValue, to?.ToMs() ?? long.MaxValue);
        var rows = context.Passages.Where(row => row.Cow == cow && row.StartedAt >= since && row.StartedAt < until);
        var found = await (from row in rows.OrderByDescending(row => row.StartedAt).ThenByDescending(row => row.Id).Take(count)
                           join assessment in context.Assessments on row.Id equals assessment.PassageId into assessments
                           from assessment in assessments.DefaultIfEmpty()
                           select new { Row = row, HistoryReasons = assessment == null ? "" : assessment.Reasons }).ToListAsync(cancellation);
        return (
            await rows.CountAsync(cancellation),
            [.. found.OrderByDescending(passage => passage.Row.StartedAt).ThenByDescending(passage => passage.Row.Id, StringComparer.Ordinal).Select(passage => View(passage.Row, passage.HistoryReasons))]);
    }

    /// <summary>What a chart of a cow's legs is drawn from: her passages that started in [from, to) and were evidence, oldest first.</summary>
    public async Task<IReadOnlyList<LegEvidence>> LegEvidenceOfAsync(string cow, DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        await context.Database.OpenConnectionAsync(cancellation);
        using var query = new PreparedCommand(context.Database.GetDbConnection(), LegEvidence.Sql, 3);
        using var rows = query.Query(cow, from?.ToMs() ?? long.MinValue, to?.ToMs() ?? long.MaxValue);
        var found = new List<LegEvidence>();
        while (await rows.ReadAsync(cancellation))
            found.Add(LegEvidence.Read(rows));
        return found;
    }

    /// <summary>All passages that started in [from, to), oldest first, nobody's too.</summary>
    public Task<IReadOnlyList<PassageView>> PassagesAsync(
        DateTimeOffset? from, DateTimeOffset? to, string? platform, bool? accepted, Page page, CancellationToken cancellation = default) =>
        PassagesAsync(rows => platform is null ? rows : rows.Where(row => row.Platform == platform), from, to, accepted, page, cancellation);

    /// <summary>One passage; null when there is none of that id.</summary>
    public async Task<PassageView?> PassageAsync(string id, CancellationToken cancellation = default) =>
        (await PassagesAsync(rows => rows.Where(row => row.Id == id), null, null, null, Page.All, cancellation)) is [var found] ? found : null;

    /// <summary>What a cow's passages that ended in [from, to) told, oldest first.</summary>
    public async Task<IReadOnlyList<PassageAssessment>> AssessmentsOfAsync(
        string cow, DateTimeOffset? from, DateTimeOffset? to, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var connection = context.Database.GetDbConnection();
        await context.Database.OpenConnectionAsync(cancellation);
        using var query = new PreparedCommand(
            connection, $"""SELECT {AssessmentColumns.Names} FROM assessments WHERE "Cow" = @0 AND "At" >= @1 AND "At" < @2 ORDER BY "At", "PassageId" """, 3);
        using var rows = query.Query(cow, from?.ToMs() ?? long.MinValue, to?.ToMs() ?? long.MaxValue);
        var found = new List<PassageAssessment>();
        while (await rows.ReadAsync(cancellation))
            found.Add(AssessmentColumns.Read(rows));
        return found;
    }

    /// <summary>A platform's kept frames that overlap [from, to), in order of time; empty once they have been pruned.</summary>
    public async Task<IReadOnlyList<Frame>> FramesAsync(
        string platform, int cells, DateTimeOffset from, DateTimeOffset to, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var connection = context.Database.GetDbConnection();
        await context.Database.OpenConnectionAsync(cancellation);
        using var query = new PreparedCommand(connection, FrameQuery.Sql, 5);
        using var rows = query.Query(platform, FrameQuery.EarliestStart(from), to.ToMs(), from.ToMs(), cells);
        var found = new List<Frame>();
        while (await rows.ReadAsync(cancellation))
            found.Add(FrameQuery.Read(rows));
        return found;
    }

    private async Task<IReadOnlyList<PassageView>> PassagesAsync(
        Func<IQueryable<PassageRow>, IQueryable<PassageRow>> choose, DateTimeOffset? from, DateTimeOffset? to, bool? accepted, Page page,
        CancellationToken cancellation)
    {
        await using var context = _contexts.CreateDbContext();
        var rows = choose(context.Passages);
        if (from is { } since)
            rows = rows.Where(row => row.StartedAt >= since.ToMs());
        if (to is { } until)
            rows = rows.Where(row => row.StartedAt < until.ToMs());

        // A passage that the gait analysis accepted may have been refused in the light of her own history.
        var judged = from row in rows
                     join assessment in context.Assessments on row.Id equals assessment.PassageId into assessments
                     from assessment in assessments.DefaultIfEmpty()
                     select new { Row = row, HistoryReasons = assessment == null ? "" : assessment.Reasons };
        if (accepted is true)
            judged = judged.Where(passage => passage.Row.Accepted && passage.HistoryReasons == "");
        else if (accepted is false)
            judged = judged.Where(passage => !passage.Row.Accepted || passage.HistoryReasons != "");
        var found = await judged
            .OrderBy(passage => passage.Row.StartedAt).ThenBy(passage => passage.Row.Id)
            .Skip(page.Skip).Take(page.Size)
            .ToListAsync(cancellation);
        return [.. found.Select(passage => View(passage.Row, passage.HistoryReasons))];
    }

    private static PassageView View(PassageRow row, string historyReasons)
    {
        var reasons = new SortedSet<QualityReason>(PassageColumns.ReadReasons(row.Reasons));
        reasons.UnionWith(PassageColumns.ReadReasons(historyReasons));
        return new PassageView
        {
            Id = row.Id,
            Platform = row.Platform,
            Cow = row.Cow,
            Eid = row.Eid.ToEid()?.ToString(),
            StartedAt = row.StartedAt.FromMs(),
            EndedAt = row.EndedAt.FromMs(),
            Quality = reasons.Count == 0 ? "accepted" : "rejected",
            Reasons = [.. reasons.Select(reason => reason.WireName())],
            WeightKg = row.WeightKg,
            StrideSeconds = row.StrideSeconds,
            SpeedMetresPerSecond = row.SpeedMetresPerSecond,
            Legs = new PerLeg<LegLoad>(View(row.Lf), View(row.Rf), View(row.Lh), View(row.Rh)),
        };
    }

    private static LegLoad View(LegColumns leg) => new(leg.LoadKg, leg.Share, leg.ShareError, leg.PeakKg, leg.StanceSeconds, leg.Footfalls);
}
