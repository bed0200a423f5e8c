using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Cancels a visit. What was on its list asks for the next one.</summary>
internal sealed class CancelVisit(BarnStore store) : WriteRoute(HttpMethods.Delete, "/api/visits/{date}", "application/json", 64 * 1024)
{
    public override bool BodyIsOptional => true;

    public override bool ReadsWrites => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParseOptional(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var day = request.Day("date", fields.Faults);
        var at = request.At(fields);
        if (fields.Faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
        var book = await store.Reader.VisitsAsync(cancellation);
        return book.On(day) is { } planned
            ? WriteDecision.Take([new VisitCancelWrite(at, day)], VisitForm.Of(planned.Visit))
            : WriteDecision.Refuse(Refusal.NotFound("date", VisitFaults.OfCancel(day, book)[0].Fault));
    }
}
