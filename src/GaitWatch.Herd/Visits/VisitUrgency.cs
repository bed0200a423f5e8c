using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>How soon an alert asks for action once the calendar of visits is looked at.</summary>
public static class VisitUrgency
{
    /// <summary>An alert that can wait for the trimmer's next visit cannot when none is near: then it is one for today.</summary>
    /// <param name="urgency">As the load alone tells.</param>
    /// <param name="today">The day asked about.</param>
    /// <param name="nextVisit">The next visit on or after that day; null when none is planned.</param>
    /// <param name="withinDays">How near a visit must be, days.</param>
    public static Urgency Of(Urgency urgency, DateOnly today, DateOnly? nextVisit, int withinDays) =>
        urgency == Urgency.NextVisit && (nextVisit is not { } visit || visit.DayNumber - today.DayNumber > withinDays)
            ? Urgency.Today
            : urgency;
}
