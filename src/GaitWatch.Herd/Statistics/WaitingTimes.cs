using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>Waiting times of the herd, for <see cref="KaplanMeier"/>.</summary>
public static class WaitingTimes
{
    /// <summary>
    /// From flag to foot in hand. A flag that was closed otherwise was watched until then; an open one until now. A watched one
    /// that asks for no action waits for nothing and is left out.
    /// </summary>
    /// <param name="alerts">Alerts, in any order.</param>
    /// <param name="labels">Their labels.</param>
    /// <param name="asOf">Now, in event time.</param>
    public static IEnumerable<WaitingTime> FromFlagToLift(IEnumerable<Alert> alerts, IEnumerable<AlertLabel> labels, DateTimeOffset asOf)
    {
        var lifted = labels.ToDictionary(label => label.Alert.Id, label => label.LiftedAt, StringComparer.Ordinal);
        return alerts.Where(alert => alert.Urgency != Urgency.Watch && alert.RaisedAt <= asOf).DistinctBy(alert => alert.Id).Select(alert =>
            lifted.TryGetValue(alert.Id, out var at) && at <= asOf
                ? new WaitingTime((at - alert.RaisedAt).TotalDays, true)
                : new WaitingTime(((alert.ClosedAt is { } closed && closed < asOf ? closed : asOf) - alert.RaisedAt).TotalDays, false));
    }

    /// <summary>From treatment to recovery shown. A foot treated anew, or not seen any more, was watched until its last passage.</summary>
    /// <param name="recoveries">Recoveries as they stand, in any order.</param>
    /// <param name="calendar">The farm's days: recovery is shown at the end of one.</param>
    public static IEnumerable<WaitingTime> FromTreatmentToRecovery(IEnumerable<RecoveryAssessment> recoveries, FarmCalendar calendar) => recoveries
        .Where(recovery => recovery.BandPercent is not null)
        .DistinctBy(recovery => recovery.FindingId)
        .Select(recovery => recovery.RecoveredOn is { } day
            ? new WaitingTime(Math.Max((calendar.EndOf(day) - recovery.TreatedAt).TotalDays, 0), true)
            : new WaitingTime(recovery.LastSeenAt is { } seen ? (seen - recovery.TreatedAt).TotalDays : 0, false));
}
