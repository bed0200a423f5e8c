using GaitWatch.Gait;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// What is behind an alert.
public sealed partial class BarnReader
{
    /// <summary>How long before its onset, and after its closing, an alert's series is shown where nothing else is asked for.</summary>
    private static readonly TimeSpan s_before = TimeSpan.FromDays(21);
    private static readonly TimeSpan s_after = TimeSpan.FromDays(14);

    /// <summary>The series behind an alert, of passages that ended in [from, to); null when there is no such alert.</summary>
    /// <param name="id">The alert, as it stands now.</param>
    /// <param name="from">Default: three weeks before onset.</param>
    /// <param name="to">Default: two weeks after it was closed; while it is not, the newest.</param>
    /// <param name="cancellation">Stops the reading.</param>
    public async Task<AlertEvidenceView?> AlertEvidenceAsync(
        string id, DateTimeOffset? from = null, DateTimeOffset? to = null, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        if (await context.Alerts.FirstOrDefaultAsync(row => row.Id == id, cancellation) is not { } found)
            return null;
        var alert = StoreJson.Read<Alert>(found.Body);
        var begin = from ?? alert.OnsetAt - s_before;
        var end = to ?? alert.ClosedAt + s_after;
        var told = await AssessmentsOfAsync(alert.Cow, begin, end, cancellation);
        // By their end, as the assessments are; a crossing begins some seconds before.
        var passages = await PassagesOfAsync(alert.Cow, begin - TimeSpan.FromHours(1), end, Page.All, cancellation);
        var shares = passages.ToDictionary(passage => passage.Id, passage => passage.Legs[alert.Leg].Share, StringComparer.Ordinal);
        return new AlertEvidenceView
        {
            AlertId = alert.Id,
            Cow = alert.Cow,
            Pattern = alert.Pattern.WireName(),
            Leg = alert.Leg.WireName(),
            OnsetAt = alert.OnsetAt,
            RaisedAt = alert.RaisedAt,
            ClosedAt = alert.ClosedAt,
            Points = [.. told.Where(one => shares.GetValueOrDefault(one.PassageId) is not null).Select(one => Point(alert, one, shares[one.PassageId]!.Value))],
        };
    }

    private static EvidencePointView Point(Alert alert, PassageAssessment told, double share) => new()
    {
        PassageId = told.PassageId,
        At = told.At,
        Baseline = told.Baseline switch
        {
            BaselineState.Learning => "learning",
            BaselineState.Watching => "watching",
            _ => "frozen",
        },
        Reasons = [.. told.Reasons.Select(reason => reason.WireName())],
        Share = share,
        ExpectedShare = told.ExpectedShare?[alert.Leg],
        ShareSpread = told.ShareSpread?[alert.Leg],
        ResidualDeviations = told is { ExpectedShare: { } expected, ShareSpread: { } spread } ? (share - expected[alert.Leg]) / spread[alert.Leg] : null,
        Residual = told.Residual,
        CommonMovement = told.CommonMovement,
        Evidence = alert.Pattern switch
        {
            AlertPattern.OneLeg => told.OneLegEvidence[alert.Leg],
            AlertPattern.BothHind => told.BothHindEvidence,
            _ => told.BothForeEvidence,
        },
        LegEvidence = told.OneLegEvidence,
    };
}
