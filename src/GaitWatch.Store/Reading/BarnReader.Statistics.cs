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
        var (now, _, alerts, labels) = await LearntAsync(cancellation);
        return HitRateView.Of(HitRateReport.Of(alerts, labels, now.Writes, period.From, period.To, _options.Calendar), period);
    }

    /// <summary>What became of the feet treated in a time, by lesion and treatment.</summary>
    public async Task<TreatmentsView> TreatmentsAsync(Period period, CancellationToken cancellation = default)
    {
        var judged = await JudgedAsync(cancellation);
        return TreatmentsView.Of([.. judged.Where(foot => _options.Calendar.DayOf(foot.TreatedAt) is var day && day >= period.From && day < period.To)], period);
    }

    /// <summary>Where in the herd and on the foot trouble came in a time, and clusters of it.</summary>
    public async Task<PatternsView> PatternsAsync(Period period, CancellationToken cancellation = default)
    {
        var (now, findings, alerts, _) = await LearntAsync(cancellation);
        return PatternsView.Of(HerdPatterns.Of(findings, alerts, now.Register, period.From, period.To, _options.Calendar), period);
    }

    /// <summary>Each month of a time, oldest first: new cases, how long they waited for the chute, how many were sound again.</summary>
    public async Task<IReadOnlyList<HerdMonthView>> MonthsAsync(Period period, CancellationToken cancellation = default)
    {
        var (now, findings, alerts, labels) = await LearntAsync(cancellation);
        var months = HerdMonth.Of(findings, alerts, labels, await JudgedAsync(cancellation), now.Register, period.From, period.To, now.AsOf, _options.Calendar);
        return [.. months.Select(HerdMonthView.Of)];
    }

    private async Task<ImmutableArray<JudgedTreatment>> JudgedAsync(CancellationToken cancellation)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        var recoveries = await RecoveriesAtAsync(context, now, null, null, cancellation, everTreated: true);
        return [.. TreatmentOutcomes.Judge(now.Findings.Findings, recoveries, _options.Calendar)];
    }

    private async Task<(Now Now, ImmutableArray<Finding> Findings, List<Alert> Alerts, ImmutableArray<AlertLabel> Labels)> LearntAsync(CancellationToken cancellation)
    {
        await using var context = _contexts.CreateDbContext();
        var now = await NowAsync(context, cancellation);
        var alerts = await AlertsAtAsync(context, null, cancellation);
        var findings = now.Findings.Findings;
        return (now, findings, alerts, AlertLabels.Of(alerts, findings, _options.Calendar));
    }
}
