using System.Collections.Immutable;
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
