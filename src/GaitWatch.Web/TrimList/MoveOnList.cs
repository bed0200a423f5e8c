using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Puts a cow elsewhere in the order of a visit's list.</summary>
internal sealed class MoveOnList(BarnStore store) : WriteRoute(HttpMethods.Put, "/api/visits/{date}/cows/{cow}/place", "application/json", 64 * 1024)
{
    public override bool ReadsState => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var day = request.Day("date", fields.Faults);
        var at = request.At(fields);
        var cow = request.Name("cow");
        var before = fields.Text("before", HerdRegisterFaults.LongestName);
        var by = fields.Text("by", CloseAlert.LongestBy) ?? "";
        if (before == cow)
            fields.Faults.Add("before", $"before is '{before}', the cow herself: the number of the cow she is to come before, or null for the end.");
        if (fields.Faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
        if (await ListRefusals.OfAsync(store, day, cow, cancellation) is { } missing)
            return WriteDecision.Refuse(missing);
        if (before is not null && await store.Reader.CowAsync(before, cancellation) is null)
            return WriteDecision.Refuse(Refusal.Invalid(Faults.Of("before", $"before is '{before}': no cow of that name is registered or has crossed a platform.")));
        return WriteDecision.Take([new TrimListMoveWrite(at, day, cow, before, by)], new ListPlaceView(day, cow, before, by, at));
    }
}
