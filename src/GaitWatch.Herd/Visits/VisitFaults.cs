using System.Collections.Immutable;
using System.Globalization;

namespace GaitWatch.Herd;

/// <summary>What must hold before a visit is moved or cancelled.</summary>
public static class VisitFaults
{
    /// <summary>More cows than one trimmer's day holds several times over: a slip of the keys. Common practice, no source.</summary>
    public const int MostPlaces = 500;

    /// <summary>What speaks against moving a visit.</summary>
    public static ImmutableArray<(string Field, string Fault)> OfMove(DateOnly from, DateOnly to, VisitBook book)
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        if (book.On(from) is null)
            faults.Add(("date", $"date is {Day(to)}, but no visit is planned on {Day(from)} that could be moved: {Planned(book)}."));
        if (book.On(to) is not null)
            faults.Add(("date", $"date is {Day(to)}, where a visit is planned already: change that one, or cancel it first."));
        return faults.ToImmutable();
    }

    /// <summary>What speaks against cancelling a visit.</summary>
    public static ImmutableArray<(string Field, string Fault)> OfCancel(DateOnly date, VisitBook book) => book.On(date) is null
        ? [("date", $"date is {Day(date)}, where no visit is planned: {Planned(book)}.")]
        : [];

    private static string Planned(VisitBook book) => book.Visits.IsEmpty
        ? "none is planned at all"
        : $"planned are {string.Join(", ", book.Visits.TakeLast(5).Select(planned => Day(planned.Visit.Date)))}";

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
