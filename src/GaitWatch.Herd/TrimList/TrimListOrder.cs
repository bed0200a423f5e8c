using System.Collections.Immutable;
using GaitWatch.Gait;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>
/// The order through the chute: first every cow to be seen today, whatever her pen; then pen by pen, each fetched once, and
/// within a pen by reason, alerts by how much less the leg carries. Known active digital dermatitis that is not urgent comes
/// last in its pen, so that the knives are disinfected after it.
/// </summary>
public static class TrimListOrder
{
    /// <summary>Puts the entries in order. A cow given twice keeps her first place only.</summary>
    public static ImmutableArray<TrimListEntry> Of(IEnumerable<TrimListEntry> entries) =>
    [
        .. entries
            .OrderBy(entry => IsToday(entry) ? 0 : 1)
            .ThenBy(entry => IsToday(entry) ? "" : entry.Pen ?? "\uffff", NaturalOrder.Comparer)
            .ThenBy(entry => entry.HasActiveDermatitis && !IsToday(entry) ? 1 : 0)
            .ThenBy(Rank)
            .ThenByDescending(entry => entry.LoadDropPercent ?? 0)
            .ThenBy(entry => entry.Cow, NaturalOrder.Comparer)
            .DistinctBy(entry => entry.Cow),
    ];

    /// <summary>
    /// Who gets a place when a visit has fewer than there are cows: whom a person put on the list, then by how pressing the
    /// reason is, whatever the pen.
    /// </summary>
    /// <param name="entries">One entry a cow.</param>
    public static ImmutableArray<TrimListEntry> ByPressure(IEnumerable<TrimListEntry> entries) =>
    [
        .. entries
            .OrderBy(entry => entry.IsPinned ? 0 : 1)
            .ThenBy(entry => IsToday(entry) ? 0 : 1)
            .ThenBy(Rank)
            .ThenByDescending(entry => entry.LoadDropPercent ?? 0)
            .ThenBy(entry => entry.Cow, NaturalOrder.Comparer),
    ];

    /// <summary>What to do beyond the leg named; a sore foot is rarely alone. Common practice, no source; hind: see the trial cited in the docs of the method.</summary>
    public static string? NoteFor(Leg? leg, AlertPattern? pattern) => (leg, pattern) switch
    {
        (_, AlertPattern.BothHind) => "Lift both hind feet; she may not limp.",
        ({ } fore, _) when fore.IsFore() => "Lift both fore feet, then both hind.",
        ({ }, _) => "Lift both hind feet.",
        _ => null,
    };

    private static bool IsToday(TrimListEntry entry) => entry.Urgency is Urgency.Today;

    // Alerts and cows not recovering share a rank: the larger drop goes first.
    private static int Rank(TrimListEntry entry) => entry.Reason switch
    {
        TrimListReason.NotRecovering or TrimListReason.Alert => 0,
        TrimListReason.Recheck or TrimListReason.BlockCheck or TrimListReason.BlockOff or TrimListReason.WrapOff => 1,
        _ => 2,
    };
}
