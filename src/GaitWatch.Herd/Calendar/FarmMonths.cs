namespace GaitWatch.Herd;

/// <summary>Months of the farm's calendar, each named by its first day.</summary>
public static class FarmMonths
{
    /// <summary>The month of a day.</summary>
    public static DateOnly Of(DateOnly day) => new(day.Year, day.Month, 1);

    /// <summary>Every month of which a day lies in [from, to), oldest first.</summary>
    public static IEnumerable<DateOnly> Between(DateOnly from, DateOnly to)
    {
        if (from >= to)
            yield break;
        var months = 12 * (to.AddDays(-1).Year - from.Year) + to.AddDays(-1).Month - from.Month;
        for (var i = 0; i <= months; i++)
            yield return Of(from).AddMonths(i);
    }
}
