using GaitWatch.Lameness;

namespace GaitWatch.Herd.Tests;

public sealed class WaitingTimesTests
{
    [Fact]
    public void From_flag_to_lift_open_and_otherwise_closed_flags_were_watched_so_far()
    {
        Alert[] alerts =
        [
            Some.Alert("1"), Some.Alert("2"), Some.Alert("3") with { State = AlertState.Closed, ClosedAt = Some.At(4, 6), CloseReason = AlertCloseReason.SeenWalkingSound },
            Some.Alert("4", urgency: Urgency.Watch),
        ];
        var labels = AlertLabels.Of(alerts, [Some.Finding("f", 2, Lesion.SoleUlcer) with { Cow = "1", At = Some.At(2, 6) }], Some.Berlin);
        Assert.Equal(
            [new WaitingTime(2, true), new WaitingTime(10, false), new WaitingTime(4, false)],
            WaitingTimes.FromFlagToLift(alerts, labels, Some.At(10, 6)));
    }

    [Fact]
    public void From_treatment_to_recovery_the_unseen_were_watched_until_last_seen()
    {
        RecoveryAssessment[] recoveries =
        [
            Some.Recovery("a", RecoveryStatus.Recovered) with { BandPercent = 3, RecoveredOn = Some.Day0.AddDays(19) },
            Some.Recovery("b", RecoveryStatus.Stalled) with { BandPercent = 3, LastSeenAt = Some.At(12) }, Some.Recovery("c", RecoveryStatus.TooEarly),
        ];
        // Treated at 10 in the farm's morning: the end of day 19 is 19 days and 14 hours later, less the hour the clocks took on 29 March.
        Assert.Equal([new WaitingTime(19 + 14 / 24.0, true), new WaitingTime(12, false)], WaitingTimes.FromTreatmentToRecovery(recoveries, Some.Berlin));
    }
}
