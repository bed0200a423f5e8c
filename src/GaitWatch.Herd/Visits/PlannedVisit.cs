using System.Collections.Immutable;

namespace GaitWatch.Herd;

/// <summary>A visit as it is planned now.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="EarlierDays">Days it was moved away from, the first first: what was said of it then still holds.</param>
public sealed record PlannedVisit(Visit Visit, ImmutableArray<DateOnly> EarlierDays)
{
    /// <summary>Whether a day is, or once was, this visit's.</summary>
    public bool IsOrWasOn(DateOnly day) => Visit.Date == day || EarlierDays.Contains(day);
}
