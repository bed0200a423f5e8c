using GaitWatch.Herd;

namespace GaitWatch.Store;

/// <summary>Whole days of the farm over which something is counted.</summary>
/// <param name="From">The first day.</param>
/// <param name="To">The day after the last.</param>
public readonly record struct Period(DateOnly From, DateOnly To)
{
    /// <summary>The twelve months up to a day: its own month so far and the eleven before.</summary>
    public static Period YearUpTo(DateOnly day) => new(FarmMonths.Of(day).AddMonths(-11), day.AddDays(1));
}
