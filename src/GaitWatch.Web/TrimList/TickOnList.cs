using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Ticks a cow off a visit's list: everybody who looks at the list sees it.</summary>
internal sealed class TickOnList(BarnStore store) : WriteRoute(HttpMethods.Put, "/api/visits/{date}/cows/{cow}/done", "application/json", 64 * 1024)
{
    public override bool BodyIsOptional => true;

    public override bool ReadsState => true;

    public override Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation) => DecideAsync(store, request, true, cancellation);

    /// <summary>Judges a tick, or one taken back.</summary>
    public static async Task<WriteDecision> DecideAsync(BarnStore store, WriteRequest request, bool isDone, CancellationToken cancellation)
    {
        if (!JsonFields.TryParseOptional(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var day = request.Day("date", fields.Faults);
        var at = request.At(fields);
        var by = fields.Text("by", CloseAlert.LongestBy) ?? "";
        if (fields.Faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
        var write = new TrimListDoneWrite(at, day, request.Name("cow"), isDone, by);
        return await ListRefusals.OfAsync(store, day, write.Cow, cancellation) is { } missing
            ? WriteDecision.Refuse(missing)
            : WriteDecision.Take([write], new ListTickView(day, write.Cow, isDone ? at : null, by));
    }
}

/// <summary>Takes a tick back.</summary>
internal sealed class UntickOnList(BarnStore store) : WriteRoute(HttpMethods.Delete, "/api/visits/{date}/cows/{cow}/done", "application/json", 64 * 1024)
{
    public override bool BodyIsOptional => true;

    public override bool ReadsState => true;

    public override Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation) =>
        TickOnList.DecideAsync(store, request, false, cancellation);
}
