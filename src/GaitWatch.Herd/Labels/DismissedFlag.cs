using System.Collections.Immutable;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A flag that somebody closed by hand, and why.</summary>
/// <param name="Alert">The alert.</param>
/// <param name="Reason">Why it was closed.</param>
/// <param name="Note">What was said with it; may be empty.</param>
/// <param name="By">Who closed it; may be empty.</param>
public sealed record DismissedFlag(Alert Alert, AlertCloseReason Reason, string Note, string By)
{
    /// <summary>The flags of some alerts that were closed by hand, the latest closed first.</summary>
    /// <param name="alerts">Alerts, in any order.</param>
    /// <param name="writes">What people entered: notes and names stand there.</param>
    public static ImmutableArray<DismissedFlag> Of(IEnumerable<Alert> alerts, IEnumerable<FarmWrite> writes)
    {
        var said = writes.OfType<CloseAlertWrite>().ToLookup(write => (write.Closed.Cow, write.Closed.Pattern, write.Closed.Leg, write.Closed.Reason, write.At));
        return
        [
            .. alerts.Where(alert => alert is { ClosedAt: not null, CloseReason: not (null or AlertCloseReason.LoadNormal) })
                .DistinctBy(alert => alert.Id)
                .Select(alert => (Alert: alert, Write: said[(alert.Cow, alert.Pattern, alert.Leg, alert.CloseReason!.Value, alert.ClosedAt!.Value)].FirstOrDefault()))
                // What the register closed because she left was dismissed by nobody.
                .Where(closed => closed.Write is not null || closed.Alert.CloseReason != AlertCloseReason.LeftHerd)
                .Select(closed => new DismissedFlag(closed.Alert, closed.Alert.CloseReason!.Value, closed.Write?.Closed.Note ?? "", closed.Write?.Closed.By ?? ""))
                .OrderByDescending(flag => flag.Alert.ClosedAt).ThenBy(flag => flag.Alert.Id, StringComparer.Ordinal),
        ];
    }
}
