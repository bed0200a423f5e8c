using GaitWatch.Herd;
using GaitWatch.Gait;
using GaitWatch.Lameness;
using Microsoft.EntityFrameworkCore;

namespace GaitWatch.Store;

// The trimmer's list.
public sealed partial class BarnReader
{
    /// <summary>
    /// The next visit's list in the order through the chute: every cow with an open alert that asks for action. A past
    /// visit's day gives the list as it stood at the end of that day.
    /// </summary>
    public async Task<IReadOnlyList<TrimListRowView>> TrimListAsync(DateOnly? visit, CancellationToken cancellation = default)
    {
        await using var context = _contexts.CreateDbContext();
        var newest = await NewestAsync(context, cancellation);
        var today = _options.Calendar.DayOf(newest);
        var day = visit ?? today;
        var register = await RegisterAsync(context, cancellation);
        var flags = await FlagsAsync(day, cancellation);
        var lastSeen = await context.CowsSeen.ToDictionaryAsync(row => row.Cow, row => row.LastSeenAt.FromMs(), StringComparer.Ordinal, cancellation);
        var order = TrimListOrder.Of(flags.Where(flag => flag.Urgency != Urgency.Watch.WireName()).Select(Entry));
        return [.. order.Select((entry, index) => Row(entry, index + 1, day < today ? _options.Calendar.StartOf(day) : newest, register, lastSeen))];
    }

    private TrimListEntry Entry(AlertView alert) => new()
    {
        Cow = alert.Cow,
        Pen = alert.Pen,
        Reason = TrimListReason.Alert,
        Leg = Legs.TryParseWireName(alert.Leg, out var leg) ? leg : null,
        Pattern = AlertNames.TryParse<AlertPattern>(alert.Pattern, AlertNames.WireName, out var pattern) ? pattern : null,
        LoadDropPercent = alert.LoadDropPercent,
        Urgency = AlertNames.TryParse<Urgency>(alert.Urgency, AlertNames.WireName, out var urgency) ? urgency : null,
        Since = _options.Calendar.DayOf(alert.OnsetAt),
    };

    private TrimListRowView Row(
        TrimListEntry entry, int position, DateTimeOffset asOf, HerdRegister register, Dictionary<string, DateTimeOffset> lastSeen)
    {
        var known = register.At(entry.Cow, asOf);
        var today = _options.Calendar.DayOf(asOf);
        return new TrimListRowView
        {
            Position = position,
            Cow = entry.Cow,
            Eid = known is null ? entry.Cow : known.Eid?.ToString(),
            Pen = entry.Pen,
            Reason = entry.Reason.WireName(),
            Leg = entry.Leg?.WireName(),
            LoadDropPercent = entry.LoadDropPercent,
            Since = entry.Since,
            Urgency = entry.Urgency?.WireName(),
            DaysInMilk = known is { CalvedOn: { } calved, DriedOffOn: null } && calved <= today ? today.DayNumber - calved.DayNumber : null,
            DueOn = known?.DueOn,
            LastSeenAt = lastSeen.TryGetValue(entry.Cow, out var seen) ? seen : null,
            Note = TrimListOrder.NoteFor(entry.Leg, entry.Pattern),
        };
    }
}
