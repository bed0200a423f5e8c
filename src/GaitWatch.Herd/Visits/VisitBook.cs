using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>
/// The trimmer's visits, one a day at most, folded from what was written. It depends on the set of writes alone, not on their
/// order or the number of copies.
/// </summary>
public sealed class VisitBook
{
    private readonly ImmutableSortedDictionary<DateOnly, PlannedVisit> _byDay;

    private VisitBook(ImmutableSortedDictionary<DateOnly, PlannedVisit> byDay, ImmutableArray<VisitSlip> slips)
    {
        _byDay = byDay;
        Visits = [.. byDay.Values];
        Slips = slips;
    }

    /// <summary>A book without visits.</summary>
    public static VisitBook Empty { get; } = Of([]);

    /// <summary>Every visit, past ones too, by day.</summary>
    public ImmutableArray<PlannedVisit> Visits { get; }

    /// <summary>Visits that were cancelled or moved to a later day, in the order in which that was entered.</summary>
    public ImmutableArray<VisitSlip> Slips { get; }

    /// <summary>Folds what was written; writes of other kinds are passed over.</summary>
    /// <param name="writes">The writes, in any order.</param>
    /// <param name="asOf">The book as it stood then: later writes are not looked at; null for all.</param>
    public static VisitBook Of(IEnumerable<FarmWrite> writes, DateTimeOffset? asOf = null)
    {
        var byDay = ImmutableSortedDictionary.CreateBuilder<DateOnly, PlannedVisit>();
        var slips = ImmutableArray.CreateBuilder<VisitSlip>();
        foreach (var write in writes
            .Where(write => write is VisitWrite or VisitMoveWrite or VisitCancelWrite && (asOf is null || write.At <= asOf))
            .Distinct()
            .OrderBy(write => write.At).ThenBy(Rank).ThenBy(Text, StringComparer.Ordinal))
        {
            Fold(write, byDay, slips);
        }

        return new VisitBook(byDay.ToImmutable(), slips.ToImmutable());
    }

    /// <summary>The visit on a day; null when none is planned.</summary>
    public PlannedVisit? On(DateOnly day) => _byDay.GetValueOrDefault(day);

    /// <summary>The next visit on or after a day; null when none is planned.</summary>
    public PlannedVisit? NextFrom(DateOnly day)
    {
        // By halves: a list asks this of every finding of years.
        int low = 0, high = Visits.Length;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (Visits[middle].Visit.Date < day)
                low = middle + 1;
            else
                high = middle;
        }

        return low < Visits.Length ? Visits[low] : null;
    }

    /// <summary>The next visit after a day; null when none is planned.</summary>
    public PlannedVisit? NextAfter(DateOnly day) => NextFrom(day.AddDays(1));

    private static void Fold(
        FarmWrite write, ImmutableSortedDictionary<DateOnly, PlannedVisit>.Builder byDay, ImmutableArray<VisitSlip>.Builder slips)
    {
        switch (write)
        {
            case VisitWrite plan:
                var before = byDay.GetValueOrDefault(plan.Visit.Date);
                byDay[plan.Visit.Date] = new PlannedVisit(plan.Visit, before?.EarlierDays ?? []);
                break;
            case VisitMoveWrite move:
                // A move whose plan has not arrived says by itself where the visit is.
                var moved = byDay.GetValueOrDefault(move.From);
                byDay.Remove(move.From);
                ImmutableArray<DateOnly> earlier = [.. moved?.EarlierDays ?? [], move.From];
                byDay[move.Visit.Date] = new PlannedVisit(move.Visit, [.. earlier.Distinct().Where(day => day != move.Visit.Date)]);
                if (move.Visit.Date > move.From)
                    slips.Add(new VisitSlip(move.From, move.Visit.Date, move.At));
                break;
            case VisitCancelWrite cancel:
                if (byDay.Remove(cancel.Date))
                    slips.Add(new VisitSlip(cancel.Date, null, cancel.At));
                break;
        }
    }

    // Entered in the same instant: what takes away comes before what sets.
    private static int Rank(FarmWrite write) => write switch { VisitCancelWrite => 0, VisitMoveWrite => 1, _ => 2 };

    private static string Text(FarmWrite write) => write switch
    {
        VisitWrite plan => Text(plan.Visit),
        VisitMoveWrite move => Day(move.From) + Text(move.Visit),
        VisitCancelWrite cancel => Day(cancel.Date),
        _ => "",
    };

    private static string Text(Visit visit) => $"{Day(visit.Date)}/{visit.Half}/{visit.Places}/{visit.Trimmer}";

    private static string Day(DateOnly day) => day.ToString("O", CultureInfo.InvariantCulture);
}
