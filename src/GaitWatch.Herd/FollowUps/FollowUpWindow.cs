namespace GaitWatch.Herd;

/// <summary>A span of days after a finding in which something is to be done.</summary>
/// <param name="FromDay">The first day it is due, days after the finding's day.</param>
/// <param name="ToDay">The day from which it counts as overdue while not done, days after the finding's day; at least <paramref name="FromDay"/>.</param>
public readonly record struct FollowUpWindow(int FromDay, int ToDay);
