using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>One month of the herd: is it getting better?</summary>
/// <param name="Month">The farm's month, by its first day.</param>
/// <param name="NewCases">Feet found with what makes a cow lame that did not have it before, by when they were found.</param>
/// <param name="Flags">Alerts raised in it that asked for action.</param>
/// <param name="OnsetToChute">Days from the onset the load tells to foot in hand, of those flags; not lifted ones censored.</param>
/// <param name="Recovered">Of the feet treated in it that could be judged, how many were sound at 35 days.</param>
public sealed record HerdMonth(DateOnly Month, int NewCases, int Flags, KaplanMeier OnsetToChute, Proportion Recovered)
{
    /// <summary>Each month of a time, oldest first.</summary>
    /// <param name="findings">Every finding, in any order, also from before.</param>
    /// <param name="alerts">Alerts, in any order.</param>
    /// <param name="labels">Their labels.</param>
    /// <param name="judged">Treated feet.</param>
    /// <param name="register">Who was in which pen.</param>
    /// <param name="from">The first day.</param>
    /// <param name="to">The day after the last.</param>
    /// <param name="asOf">Now, in event time: what is still open was watched until then.</param>
    /// <param name="calendar">The farm's days.</param>
    public static ImmutableArray<HerdMonth> Of(
        IEnumerable<Finding> findings, IEnumerable<Alert> alerts, IReadOnlyCollection<AlertLabel> labels, IEnumerable<JudgedTreatment> judged,
        HerdRegister register, DateOnly from, DateOnly to, DateTimeOffset asOf, FarmCalendar calendar)
    {
        DateOnly MonthOf(DateTimeOffset at) => calendar.DayOf(at) is var day && day >= from && day < to ? FarmMonths.Of(day) : default;
        var cases = LesionCase.Of(findings, register).Where(found => found.MakesLame).ToLookup(found => MonthOf(found.At));
        var flags = alerts.Where(alert => alert.Urgency != Urgency.Watch).DistinctBy(alert => alert.Id).ToLookup(alert => MonthOf(alert.RaisedAt));
        var treated = judged.ToLookup(foot => MonthOf(foot.TreatedAt));
        return
        [
            .. FarmMonths.Between(from, to).Select(month => new HerdMonth(
                month,
                // A foot with two lesions is one lame foot.
                cases[month].DistinctBy(found => (found.Cow, found.Foot)).Count(),
                flags[month].Count(),
                KaplanMeier.Of(WaitingTimes.FromOnsetToLift(flags[month], labels, asOf)),
                new Proportion(treated[month].Count(foot => foot.IsSound == true), treated[month].Count(foot => foot.IsSound is not null)))),
        ];
    }
}
