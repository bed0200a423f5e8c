using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What the page about recovery tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Open">Treated feet that have not recovered, those that get worse or stand still first.</param>
/// <param name="Lately">Feet that were shown to have recovered in the last 30 days, newest first.</param>
public sealed record RecoveryModel(PageContext Page, ImmutableArray<RecoveryFoot> Open, ImmutableArray<RecoveryAssessment> Lately)
{
    private const int LatelyDays = 30;

    internal static async Task<RecoveryModel> ReadAsync(BarnStore store, CancellationToken cancellation)
    {
        var page = await PageContext.ReadAsync(store, RecoveryTexts.Title, "/recovery", cancellation);
        var log = await store.Reader.FindingsAsync(cancellation);
        // A foot treated again is followed from its newest treatment on.
        var feet = (await store.Reader.RecoveriesByDayAsync(cancellation)).GroupBy(foot => (foot.Cow, foot.Foot)).Select(ofFoot => ofFoot.MaxBy(foot => foot.TreatedAt)!).ToArray();
        return new RecoveryModel(
            page,
            [.. feet.Where(foot => foot.Status != RecoveryStatus.Recovered).OrderBy(Rank).ThenByDescending(foot => foot.DropPercentNow ?? 0).ThenBy(foot => foot.Cow, NaturalOrder.Comparer)
                .Select(foot => RecoveryFoot.Of(foot, log, page))],
            [.. feet.Where(foot => foot.RecoveredOn is { } day && foot.Status == RecoveryStatus.Recovered && day >= page.Today.AddDays(-LatelyDays)).OrderByDescending(foot => foot.RecoveredOn)]);
    }

    private static int Rank(RecoveryAssessment foot) => foot.Status switch
    {
        RecoveryStatus.Worse => 0,
        RecoveryStatus.Stalled => 1,
        RecoveryStatus.TooEarly => 2,
        _ => 3,
    };
}

/// <summary>A treated foot with its chart.</summary>
/// <param name="Recovery">Where it stands.</param>
/// <param name="Finding">What was found and done; null when it is known no more.</param>
/// <param name="Chart">Its chart.</param>
public sealed record RecoveryFoot(RecoveryAssessment Recovery, Finding? Finding, RecoveryChart Chart)
{
    internal static RecoveryFoot Of(RecoveryAssessment recovery, FindingLog log, PageContext page) =>
        new(recovery, log.Find(recovery.FindingId)?.Current, new RecoveryChart(recovery, page));
}
