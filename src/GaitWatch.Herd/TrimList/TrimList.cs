using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>A visit's list.</summary>
public sealed record TrimList
{
    /// <summary>The visit's day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The visit; null when none is planned on that day.</summary>
    public Visit? Visit { get; init; }

    /// <summary>Every cow in the order through the chute; those without a place come last and are marked.</summary>
    public ImmutableArray<TrimListRow> Rows { get; init; } = [];

    /// <summary>Cows that a person took off, with the reason.</summary>
    public ImmutableArray<TrimListRemoval> Removed { get; init; } = [];

    /// <summary>How many cows have no place.</summary>
    public int WithoutPlace => Rows.Count(row => !row.HasPlace);
}
