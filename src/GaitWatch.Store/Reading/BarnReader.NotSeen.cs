using System.Globalization;
using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;

namespace GaitWatch.Store;

// Cows who should cross and do not.
public sealed partial class BarnReader
{
    // Every cow in milk crosses after every milking. Common practice, no source.
    private static readonly TimeSpan CrossesWithin = TimeSpan.FromHours(24);

    /// <summary>
    /// Cows in milk with an open flag, or with a treated foot that is not shown to be recovered, who have not crossed for more than a
    /// day while others did; who has been missing longest first. Silence clears nothing.
    /// </summary>
    public async Task<IReadOnlyList<NotSeenView>> NotSeenAsync(CancellationToken cancellation = default)
    {
        var now = await NowAsync(cancellation);
        return await OnceAsync(now, "not-seen", null, _ => NotSeenAsync(now), cancellation);
    }

    private async Task<IReadOnlyList<NotSeenView>> NotSeenAsync(Now now)
    {
        var today = _options.Calendar.DayOf(now.Newest);
        var missingSince = now.Newest - CrossesWithin;
        var missing = (await LastSeenAsync(now, CancellationToken.None)).Where(seen => seen.Value < missingSince).ToDictionary(seen => seen.Key, seen => seen.Value, StringComparer.Ordinal);
        var open = (await OnceAsync(now, "alerts", null, ReadAlertsAsync, CancellationToken.None))
            .Where(alert => alert.State != AlertState.Closed && alert.Urgency != Urgency.Watch).OrderBy(alert => alert.Urgency).ThenByDescending(alert => alert.LoadDropPercent)
            .ToLookup(alert => alert.Cow, StringComparer.Ordinal);
        var treated = (await RecoveriesAsync(now, everTreated: false, CancellationToken.None))
            .GroupBy(recovery => (recovery.Cow, recovery.Foot)).Select(foot => foot.MaxBy(recovery => recovery.TreatedAt)!)
            .Where(recovery => recovery.Status != RecoveryStatus.Recovered).OrderByDescending(recovery => recovery.TreatedAt)
            .ToLookup(recovery => recovery.Cow, StringComparer.Ordinal);
        return
        [
            .. missing.Keys.Where(cow => (open.Contains(cow) || treated.Contains(cow)) && ShouldCross(now.Register, cow, today, now.Newest))
                .Select(cow => NotSeen(cow, missing[cow], open[cow].FirstOrDefault(), treated[cow].FirstOrDefault(), now.Register.At(cow, now.Newest)?.Pen))
                .OrderBy(view => view.LastSeenAt).ThenBy(view => view.Cow, NaturalOrder.Comparer),
        ];
    }

    // A dry cow crosses no platform, nor does one that has left.
    private static bool ShouldCross(HerdRegister register, string cow, DateOnly today, DateTimeOffset now) =>
        register.At(cow, now) is not { } known || ((known.DriedOffOn is not { } dry || dry > today) && (known.LeftOn is not { } left || left > today));

    private NotSeenView NotSeen(string cow, DateTimeOffset lastSeen, Alert? alert, RecoveryAssessment? treated, string? pen)
    {
        var leg = alert?.Leg ?? treated!.Foot;
        var since = string.Create(CultureInfo.InvariantCulture, $"Not seen since {_options.Calendar.DayOf(lastSeen):yyyy-MM-dd}");
        var why = alert is not null
            ? $"flagged on the {leg.InWords()}"
            : string.Create(CultureInfo.InvariantCulture, $"treated on the {leg.InWords()} on {_options.Calendar.DayOf(treated!.TreatedAt):yyyy-MM-dd}, not shown to be recovered");
        return new NotSeenView(
            cow, pen, lastSeen, alert is not null ? "alert" : "treated", leg.WireName(), alert?.Id, treated?.TreatedAt, $"{since}; {why}: find her first.");
    }
}
