using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>What a cow's page tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Cow">Her register facts.</param>
/// <param name="Span">The time shown.</param>
/// <param name="First">The first day shown.</param>
/// <param name="Open">Her flags that are not closed.</param>
/// <param name="Past">Her flags that are closed, newest first.</param>
/// <param name="Charts">Her four legs.</param>
/// <param name="Feet">Her treated feet, newest treatment first.</param>
/// <param name="Happened">What happened to her feet in the time shown, newest first.</param>
/// <param name="Passages">Her newest passages, newest first.</param>
/// <param name="PassagesInSpan">How many she has in the span.</param>
/// <param name="JustClosed">A flag closed a moment ago; null when none.</param>
public sealed record CowModel(
    PageContext Page, CowView Cow, CowSpan Span, DateOnly First, ImmutableArray<FlagCard> Open, ImmutableArray<AlertView> Past, ImmutableArray<LegChart> Charts,
    ImmutableArray<RecoveryFoot> Feet, ImmutableArray<CowEventLine> Happened, ImmutableArray<PassageView> Passages, int PassagesInSpan, AlertView? JustClosed)
{
    private const int PassagesShown = 20;

    internal static async Task<CowModel?> ReadAsync(BarnStore store, string cow, IQueryCollection query, CancellationToken cancellation)
    {
        if (await store.Reader.CowAsync(cow, cancellation) is not { } view)
            return null;
        var page = await PageContext.ReadAsync(store, CowTexts.Title(cow), "/cows", cancellation);
        var span = CowSpan.Read(query, page.Today);
        var (from, to) = (span.First is { } begin ? page.Calendar.StartOf(begin) : (DateTimeOffset?)null, page.Calendar.EndOf(span.Last));
        // Read side by side: none needs another.
        var readEvidence = Task.Run(() => store.Reader.LegEvidenceOfAsync(cow, from, to, cancellation), cancellation);
        var readPassages = Task.Run(() => store.Reader.NewestPassagesOfAsync(cow, from, to, PassagesShown, cancellation), cancellation);
        var alerts = await store.Reader.AlertsAsync(null, null, null, cow, Store.Page.All, cancellation);
        var recoveries = await store.Reader.RecoveriesOfAsync(cow, cancellation);
        var log = await store.Reader.FindingsAsync(cancellation);
        var findings = log.OfCow(cow).ToArray();
        var evidence = await readEvidence;
        var (all, newest) = await readPassages;
        var first = span.First ?? (evidence.Count > 0 ? page.Calendar.DayOf(evidence[0].EndedAt) : newest.Count > 0 ? page.Calendar.DayOf(newest[^1].StartedAt) : span.Last);

        IEnumerable<ChartMark> Marks(Leg leg) => alerts.Where(alert => AlertTexts.SoreFeet(alert).Contains(leg)).SelectMany(ChartMark.Of)
            .Concat(findings.Where(finding => finding.Foot == leg).Select(ChartMark.Of))
            .Concat(recoveries.Where(foot => foot.Foot == leg && foot.RecoveredOn is not null).Select(foot => new ChartMark(page.Calendar.StartOf(foot.RecoveredOn!.Value).AddHours(12), ChartMarkKind.Recovered)));
        IEnumerable<CareSpan> Worn(Leg leg) => CareSpans.Of(recoveries.Where(foot => foot.Foot == leg).SelectMany(foot => foot.Marks), page.Newest);

        var series = LegSeries.Of(evidence, page.Calendar, CowSpan.DaysAPoint(first, span.Last), Marks, Worn);
        var closed = AlertState.Closed.WireName();
        return new CowModel(
            page, view, span, first,
            [.. alerts.Where(alert => alert.State != closed).Select(alert => new FlagCard(alert, page.Today.DayNumber - page.Calendar.DayOf(alert.OnsetAt).DayNumber, null))],
            [.. alerts.Where(alert => alert.State == closed)],
            LegChart.Of(series, first, span.Last, page.Calendar),
            [.. recoveries.GroupBy(foot => foot.Foot).Select(ofFoot => ofFoot.MaxBy(foot => foot.TreatedAt)!).OrderByDescending(foot => foot.TreatedAt).Select(foot => RecoveryFoot.Of(foot, log, page))],
            [.. CowEventLine.Of(alerts, findings, recoveries, page).Where(line => from is null || line.At >= from).Where(line => line.At < to).OrderByDescending(line => line.At)],
            [.. newest],
            all,
            query["closed"].ToString() is { Length: > 0 } id ? alerts.FirstOrDefault(alert => alert.Id == id) : null);
    }
}
