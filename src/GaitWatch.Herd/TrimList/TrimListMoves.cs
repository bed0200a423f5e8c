using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>Makes the moves that people made on the order that the rules give: a cow that comes on the list later still goes where the rules put her.</summary>
internal static class TrimListMoves
{
    /// <summary>Applies moves in order. A move of, or before, a cow that is not on the list is passed over.</summary>
    public static ImmutableArray<TrimListEntry> Apply(ImmutableArray<TrimListEntry> entries, IEnumerable<TrimListMoveWrite> moves)
    {
        var order = entries.ToList();
        foreach (var move in moves.Distinct().Order(TrimListMoveWrite.Order))
        {
            var from = order.FindIndex(entry => entry.Cow == move.Cow);
            if (from < 0 || (move.Before is { } other && (other == move.Cow || !order.Exists(entry => entry.Cow == other))))
                continue;
            var moved = order[from];
            order.RemoveAt(from);
            order.Insert(move.Before is { } before ? order.FindIndex(entry => entry.Cow == before) : order.Count, moved);
        }

        return [.. order];
    }
}
