using System.Collections.Immutable;
using System.Globalization;
using GaitWatch.Lameness;

namespace GaitWatch.Herd;

/// <summary>A visit as the wire contract writes it.</summary>
public sealed record VisitForm
{
    /// <summary>The farm's day; null takes the day in the route.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>null, <c>am</c> or <c>pm</c>.</summary>
    public string? Half { get; init; }

    /// <summary>Who comes.</summary>
    public string? Trimmer { get; init; } = "";

    /// <summary>How many cows there is time for.</summary>
    public int? Places { get; init; }

    /// <summary>How a visit looks on the wire.</summary>
    public static VisitForm Of(Visit visit) =>
        new() { Date = visit.Date, Half = visit.Half?.WireName(), Trimmer = visit.Trimmer, Places = visit.Places };

    /// <summary>
    /// Turns what was put under a day into a write: a plan or a change, or, when it names another day than its route, a move.
    /// </summary>
    /// <param name="route">The day in the route.</param>
    /// <param name="book">The visits as they stand.</param>
    /// <param name="at">When it is entered.</param>
    public VisitReading Read(DateOnly route, VisitBook book, DateTimeOffset at)
    {
        var faults = ImmutableArray.CreateBuilder<(string, string)>();
        VisitHalf? half = null;
        if (AlertNames.TryParse(Half, VisitNames.WireName, out VisitHalf known))
            half = known;
        else if (Half is not null)
            faults.Add(("half", $"half is '{FindingFaults.Shorten(Half)}': am, pm, or null for the whole day."));
        if (Places is < 1 or > VisitFaults.MostPlaces)
            faults.Add(("places", $"places is {Places}: how many cows there is time for, 1 to {VisitFaults.MostPlaces}, or null when not known."));
        if (Trimmer is { } trimmer && (trimmer.Length > FindingFaults.LongestName || trimmer.Any(char.IsControl)))
            faults.Add(("trimmer", $"trimmer is '{FindingFaults.Shorten(trimmer)}': a name of at most {FindingFaults.LongestName} characters."));
        var date = Date ?? route;
        if (date != route)
            faults.AddRange(VisitFaults.OfMove(route, date, book));
        if (faults.Count > 0)
            return new VisitReading(null, faults.ToImmutable());
        var visit = new Visit(date) { Half = half, Trimmer = Trimmer ?? "", Places = Places };
        return new VisitReading(date == route ? new VisitWrite(at, visit) : new VisitMoveWrite(at, route, visit), []);
    }
}

/// <summary>What became of a form: a write, or what is wrong with it.</summary>
/// <param name="Write">The write; null when there is a fault.</param>
/// <param name="Faults">Everything wrong, field and sentence.</param>
public sealed record VisitReading(FarmWrite? Write, ImmutableArray<(string Field, string Fault)> Faults);

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
