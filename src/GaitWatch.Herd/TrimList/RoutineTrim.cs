namespace GaitWatch.Herd;

/// <summary>Whether a cow's claws are due for their routine trim.</summary>
public static class RoutineTrim
{
    /// <summary>Why she is due on a day; null when she is not.</summary>
    /// <param name="cow">What is known of her on that day.</param>
    /// <param name="day">The day of the visit.</param>
    /// <param name="lastTrim">The day of her last trim; null when none was recorded.</param>
    /// <param name="options">The rules.</param>
    public static string? DueBecause(CowRegistration cow, DateOnly day, DateOnly? lastTrim, RoutineTrimOptions options)
    {
        if (!options.IsOn || cow.LeftOn <= day)
            return null;
        int? toCalving = cow.DueOn is { } due ? due.DayNumber - day.DayNumber : null;
        if (toCalving is { } near && near < options.NoneWithinDaysBeforeCalving)
            return null;
        if (lastTrim is { } trimmed && day.DayNumber - trimmed.DayNumber < options.NotWithinDaysOfTrim)
            return null;
        if (cow.DriedOffOn is { } dried && dried <= day)
            return day.DayNumber - dried.DayNumber <= options.AfterDryOffDays ? "dried off" : null;
        if (IsHeifer(cow))
        {
            return toCalving is { } days && days <= options.HeiferFromDaysBeforeCalving && days >= options.HeiferToDaysBeforeCalving
                ? "heifer before calving"
                : null;
        }

        var inMilk = DaysInMilk(cow, day);
        return inMilk >= options.FromDaysInMilk && inMilk <= options.ToDaysInMilk ? $"{inMilk} days in milk" : null;
    }

    /// <summary>Days since she calved; null when she is dry, has not calved, or it is not said.</summary>
    public static int? DaysInMilk(CowRegistration? cow, DateOnly day)
    {
        if (cow?.CalvedOn is not { } calved || calved > day || cow.DriedOffOn <= day)
            return null;
        return day.DayNumber - calved.DayNumber;
    }

    private static bool IsHeifer(CowRegistration cow) => cow.Parity == 0 || (cow.Parity is null && cow.CalvedOn is null);
}
