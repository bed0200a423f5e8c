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
        return Waiting(alerts, asOf).Select(alert =>
            lifted.TryGetValue(alert.Id, out var at) && at <= asOf
                ? new WaitingTime((at - alert.RaisedAt).TotalDays, true)
                : new WaitingTime(((alert.ClosedAt is { } closed && closed < asOf ? closed : asOf) - alert.RaisedAt).TotalDays, false));
    }

    /// <summary>
    /// From the onset that the load tells to foot in hand, of flags raised; open and otherwise closed ones were watched so far.
    /// </summary>
    /// <param name="alerts">Alerts, in any order.</param>
    /// <param name="labels">Their labels.</param>
    /// <param name="asOf">Now, in event time.</param>
    public static IEnumerable<WaitingTime> FromOnsetToLift(IEnumerable<Alert> alerts, IEnumerable<AlertLabel> labels, DateTimeOffset asOf)
    {
        var all = alerts.DistinctBy(alert => alert.Id).ToArray();
        // The flag waits from when it was raised, the cow from when she began to spare the leg.
        return FromFlagToLift(all, labels, asOf).Zip(Waiting(all, asOf), (time, alert) => time with { Days = time.Days + Math.Max((alert.RaisedAt - alert.OnsetAt).TotalDays, 0) });
    }

    /// <summary>From treatment to recovery shown. A foot treated anew, or not seen any more, was watched until its last passage.</summary>
    /// <param name="recoveries">Recoveries as they stand, in any order.</param>
    /// <param name="calendar">The farm's days: recovery is shown at the end of one.</param>
    public static IEnumerable<WaitingTime> FromTreatmentToRecovery(IEnumerable<RecoveryAssessment> recoveries, FarmCalendar calendar) => recoveries
        .DistinctBy(recovery => recovery.FindingId)
        .Select(recovery => ToRecovery(recovery, calendar))
        .OfType<WaitingTime>();

    /// <summary>From one treatment to recovery shown; null where no normal of hers from before is known, so that none can be.</summary>
    /// <param name="recovery">The recovery as it stands.</param>
    /// <param name="calendar">The farm's days.</param>
    public static WaitingTime? ToRecovery(RecoveryAssessment recovery, FarmCalendar calendar) => recovery switch
    {
        { BandPercent: null } => null,
        { RecoveredOn: { } day } => new WaitingTime(Math.Max((calendar.EndOf(day) - recovery.TreatedAt).TotalDays, 0), true),
        _ => new WaitingTime(recovery.LastSeenAt is { } seen ? (seen - recovery.TreatedAt).TotalDays : 0, false),
    };

    private static IEnumerable<Alert> Waiting(IEnumerable<Alert> alerts, DateTimeOffset asOf) =>
        alerts.Where(alert => alert.Urgency != Urgency.Watch && alert.RaisedAt <= asOf).DistinctBy(alert => alert.Id);
}
