using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Takes back what was decided by hand about a cow and a visit: the rules hold again.</summary>
internal sealed class TakeBackOnList(BarnStore store) : WriteRoute(HttpMethods.Delete, "/api/visits/{date}/cows/{cow}", "application/json", 64 * 1024)
{
    public override bool BodyIsOptional => true;

    public override bool ReadsWrites => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParseOptional(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var day = request.Day("date", fields.Faults);
        var at = request.At(fields);
        return fields.Faults.Any
            ? WriteDecision.Refuse(Refusal.Invalid(fields.Faults))
            : await DecideOnList.JudgeAsync(
                store, new TrimListHandWrite(at, day, await store.Reader.CowMeantAsync(request.Name("cow"), cancellation), TrimListHand.AsRule, ""), fields.Faults, mustBeKnown: false, cancellation);
    }
}
