using System.Collections.Immutable;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

// What the herd can learn from what was flagged, found and done.
public sealed partial class BarnReader
{
    /// <summary>The default time of statistics: the twelve months up to the newest event.</summary>
    public async Task<Period> LastYearAsync(CancellationToken cancellation = default) => Period.YearUpTo(await NewestDayAsync(cancellation));

    /// <summary>How often flags raised in a time were true, by month and urgency, and why flags were dismissed.</summary>
    public async Task<HitRateView> HitRateAsync(Period period, CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return await OnceAsync(
            now, "hit-rate", period,
            async _ =>
            {
                var (alerts, labels) = await LearntAsync(now);
                return HitRateView.Of(HitRateReport.Of(alerts, labels, now.Writes, period.From, period.To, _options.Calendar), period);
            },
            cancellation);
    }

    /// <summary>What became of the feet treated in a time, by lesion and treatment.</summary>
    public async Task<TreatmentsView> TreatmentsAsync(Period period, CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return await OnceAsync(
            now, "treatments", period,
            async _ => TreatmentsView.Of([.. (await JudgedAsync(now)).Where(foot => _options.Calendar.DayOf(foot.TreatedAt) is var day && day >= period.From && day < period.To)], period),
            cancellation);
    }

    /// <summary>Where in the herd and on the foot trouble came in a time, and clusters of it.</summary>
    public async Task<PatternsView> PatternsAsync(Period period, CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return await OnceAsync(
            now, "patterns", period,
            async _ => PatternsView.Of(HerdPatterns.Of(now.Findings.Findings, (await LearntAsync(now)).Alerts, now.Register, period.From, period.To, _options.Calendar), period),
            cancellation);
    }

    /// <summary>Each month of a time, oldest first: new cases, how long they waited for the chute, how many were sound again.</summary>
    public async Task<IReadOnlyList<HerdMonthView>> MonthsAsync(Period period, CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return await OnceAsync<IReadOnlyList<HerdMonthView>>(
            now, "months", period,
            async _ =>
            {
                var (alerts, labels) = await LearntAsync(now);
                var months = HerdMonth.Of(now.Findings.Findings, alerts, labels, await JudgedAsync(now), now.Register, period.From, period.To, now.AsOf, _options.Calendar);
                return [.. months.Select(HerdMonthView.Of)];
            },
            cancellation);
    }

    private Task<ImmutableArray<JudgedTreatment>> JudgedAsync(Now now) => OnceAsync<ImmutableArray<JudgedTreatment>>(
        now, "judged", null,
        async _ => [.. TreatmentOutcomes.Judge(now.Findings.Findings, await RecoveriesAsync(now, everTreated: true, CancellationToken.None), _options.Calendar)],
        CancellationToken.None);

    private Task<(IReadOnlyList<Alert> Alerts, ImmutableArray<AlertLabel> Labels)> LearntAsync(Now now) => OnceAsync(
        now, "learnt", null,
        async context =>
        {
            var alerts = await AlertsAtAsync(context, now, null, CancellationToken.None);
            return (alerts, AlertLabels.Of(alerts, now.Findings.Findings, _options.Calendar));
        },
        CancellationToken.None);
}
