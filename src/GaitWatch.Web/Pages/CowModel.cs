using System.Collections.Immutable;
using GaitWatch.Lameness;
using GaitWatch.Store;

namespace GaitWatch.Web;

/// <summary>What a cow's page tells.</summary>
/// <param name="Page">What surrounds it.</param>
/// <param name="Cow">Her register facts.</param>
/// <param name="SpanDays">How many days are shown.</param>
/// <param name="Open">Her flags that are not closed.</param>
/// <param name="Past">Her flags that are closed, newest first.</param>
/// <param name="Charts">Her four legs.</param>
/// <param name="Passages">Her newest passages, newest first.</param>
/// <param name="PassagesInSpan">How many she has in the span.</param>
/// <param name="JustClosed">A flag closed a moment ago; null when none.</param>
public sealed record CowModel(
    PageContext Page, CowView Cow, int SpanDays, ImmutableArray<FlagCard> Open, ImmutableArray<AlertView> Past, ImmutableArray<LegChart> Charts,
    ImmutableArray<PassageLine> Passages, int PassagesInSpan, AlertView? JustClosed)
{
    /// <summary>The spans one can choose, days.</summary>
    public static ImmutableArray<int> Spans { get; } = [14, 60, 180, 365];

    /// <summary>The span shown when none is chosen, days.</summary>
    public const int DefaultSpan = 60;

    private const int PassagesShown = 30;

    internal static async Task<CowModel?> ReadAsync(BarnStore store, string cow, int span, string? justClosed, CancellationToken cancellation)
    {
        if (await store.Reader.CowAsync(cow, cancellation) is not { } view)
            return null;
        var page = await PageContext.ReadAsync(store, CowTexts.Title(cow), "/cows", cancellation);
        var first = page.Today.AddDays(1 - span);
        var from = page.Calendar.StartOf(first);
        var alerts = await store.Reader.AlertsAsync(null, null, null, cow, Store.Page.All, cancellation);
        var passages = await store.Reader.PassagesOfAsync(cow, from, null, Store.Page.All, cancellation);
        var assessments = await store.Reader.AssessmentsOfAsync(cow, from, null, cancellation);
        var doubts = assessments.Where(told => !told.Reasons.IsEmpty).ToDictionary(told => told.PassageId, told => told.Reasons, StringComparer.Ordinal);
        var charts = LegChart.Of(LegSeries.Of(passages, assessments, alerts, page.Calendar), first, page.Today, page.Calendar);
        var closed = AlertState.Closed.WireName();
        return new CowModel(
            page, view, span,
            [.. alerts.Where(alert => alert.State != closed).Select(alert => new FlagCard(alert, page.Today.DayNumber - page.Calendar.DayOf(alert.OnsetAt).DayNumber, null))],
            [.. alerts.Where(alert => alert.State == closed)],
            charts,
            [.. passages.TakeLast(PassagesShown).Reverse().Select(passage => new PassageLine(passage, [.. passage.Reasons, .. doubts.GetValueOrDefault(passage.Id, []).Select(QualityReasonNames)]))],
            passages.Count,
            alerts.FirstOrDefault(alert => alert.Id == justClosed));
    }

    private static string QualityReasonNames(Gait.QualityReason reason) => Gait.QualityReasons.WireName(reason);
}

/// <summary>A passage in a cow's table.</summary>
/// <param name="Passage">The passage.</param>
/// <param name="Reasons">Why it was not used, wire names, found by the gait analysis or in the light of her own history; empty when it was.</param>
public sealed record PassageLine(PassageView Passage, ImmutableArray<string> Reasons);
