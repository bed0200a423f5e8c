using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Takes the farm's word that it did what a follow-up asks for. Said twice it counts once.</summary>
internal sealed class DoFollowUp(BarnStore store) : WriteRoute(HttpMethods.Post, "/api/follow-ups/{id}/done", "application/json", 64 * 1024)
{
    public override bool BodyIsOptional => true;

    public override bool ReadsState => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParseOptional(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var isTold = fields.Instant("at") is not null || request.Query.ContainsKey("at");
        var at = request.At(fields);
        var by = fields.Text("by", CloseAlert.LongestBy) ?? "";
        var note = fields.Text("note", CloseAlert.LongestNote) ?? "";
        if (fields.Faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));

        var id = request.Name("id");
        if (await store.Reader.FollowUpAsync(id, cancellation) is not { } followUp)
            return WriteDecision.Refuse(Refusal.NotFound("id", $"id is '{id}': nothing of that id is to be done; GET /api/follow-ups lists what is."));
        if (followUp.DoneAt is { } done)
        {
            return !isTold || at == done
                ? WriteDecision.Take([], followUp)
                : WriteDecision.Refuse(Refusal.Conflict("at", $"at is {Time(at)}, but this was done at {Time(done)} already; nothing is left to do."));
        }

        var since = followUp.FindingId is { } findingId ? (await store.Reader.FindingsAsync(cancellation)).Find(findingId)?.Current.At : null;
        if (at < since)
            return WriteDecision.Refuse(Refusal.Invalid(Faults.Of("at", $"at is {Time(at)}, before the finding of {Time(since.Value)} that asks for it: a time after that is needed.")));
        return WriteDecision.Take([new FollowUpDoneWrite(at, id, by, note)], followUp);
    }

    private static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", System.Globalization.CultureInfo.InvariantCulture);
}
