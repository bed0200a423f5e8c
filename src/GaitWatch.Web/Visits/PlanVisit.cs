using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Plans a visit, changes a planned one, or, where the body names another day than the route, moves it there.</summary>
internal sealed class PlanVisit(BarnStore store) : WriteRoute(HttpMethods.Put, "/api/visits/{date}", "application/json", 64 * 1024)
{
    /// <summary>Where the visit is then, and whether there was none before.</summary>
    public sealed record Planned(Visit Visit, bool IsNew);

    public override bool ReadsWrites => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var day = request.Day("date", fields.Faults);
        var form = new VisitForm
        {
            Date = fields.Day("date"),
            Half = fields.Text("half", 1000),
            Trimmer = fields.Text("trimmer", 1000),
            Places = fields.Whole("places"),
        };
        var at = request.At(fields);
        if (fields.Faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));

        var book = await store.Reader.VisitsAsync(cancellation);
        var to = form.Date ?? day;
        if (IsMovedAlready(form, day, to, book) is { } moved)
            return WriteDecision.Take([], new Planned(moved, false));
        var reading = form.Read(day, book, at);
        return reading.Write switch
        {
            VisitWrite plan => WriteDecision.Take([plan], new Planned(plan.Visit, book.On(day) is null)),
            VisitMoveWrite move => WriteDecision.Take([move], new Planned(move.Visit, false)),
            _ => WriteDecision.Refuse(Refuse(fields.Faults.AddNew(reading.Faults), reading, day, to, book)),
        };
    }

    // A program that did not hear the answer sends a move again: what it asks for is done.
    private static Visit? IsMovedAlready(VisitForm form, DateOnly from, DateOnly to, VisitBook book) =>
        from != to && book.On(from) is null && book.On(to) is { } there && there.EarlierDays.Contains(from) && VisitForm.Of(there.Visit) == form with { Date = to, Trimmer = form.Trimmer ?? "" }
            ? there.Visit
            : null;

    // A visit that is not there, or a day that is taken, is no fault of the form.
    private static Refusal Refuse(Faults faults, VisitReading reading, DateOnly from, DateOnly to, VisitBook book)
    {
        var ofMove = from == to ? [] : VisitFaults.OfMove(from, to, book);
        if (ofMove.IsEmpty || reading.Faults.Length > ofMove.Length)
            return Refusal.Invalid(faults);
        var sentence = string.Join(' ', ofMove.Select(fault => fault.Fault));
        return book.On(from) is null ? Refusal.NotFound("date", sentence) : Refusal.Conflict("date", sentence);
    }
}
