using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>The herd's own hit rate over a time: of the flags raised in it that asked for action, how often one was true.</summary>
/// <param name="Overall">All of them.</param>
/// <param name="ByMonth">By the farm's month in which they were raised, every month of the time.</param>
/// <param name="ByUrgency">By urgency, the most urgent first; those that ask to be watched stand here alone.</param>
/// <param name="Dismissed">Those closed by hand, and why, the latest first.</param>
public sealed record HitRateReport(
    FlagTally Overall,
    ImmutableArray<(DateOnly Month, FlagTally Flags)> ByMonth,
    ImmutableArray<(Urgency Urgency, FlagTally Flags)> ByUrgency,
    ImmutableArray<DismissedFlag> Dismissed)
{
    /// <summary>The report of a time.</summary>
    /// <param name="alerts">Alerts, in any order; those raised in the time count.</param>
    /// <param name="labels">Labels of any alerts.</param>
    /// <param name="writes">What people entered.</param>
    /// <param name="from">The first day.</param>
    /// <param name="to">The day after the last.</param>
    /// <param name="calendar">The farm's days.</param>
    public static HitRateReport Of(
        IEnumerable<Alert> alerts, IReadOnlyCollection<AlertLabel> labels, IEnumerable<FarmWrite> writes, DateOnly from, DateOnly to, FarmCalendar calendar)
    {
        var raised = alerts.Where(alert => calendar.DayOf(alert.RaisedAt) is var day && day >= from && day < to).DistinctBy(alert => alert.Id).ToArray();
        var flags = raised.Where(alert => alert.Urgency != Urgency.Watch).ToArray();
        var byMonth = flags.ToLookup(alert => FarmMonths.Of(calendar.DayOf(alert.RaisedAt)));
        return new HitRateReport(
            FlagTally.Of(flags, labels),
            [.. FarmMonths.Between(from, to).Select(month => (month, FlagTally.Of(byMonth[month], labels)))],
            [.. Enum.GetValues<Urgency>().Order().Select(urgency => (urgency, FlagTally.Of(raised.Where(alert => alert.Urgency == urgency), labels)))],
            DismissedFlag.Of(raised, writes));
    }
}
