using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>
/// Takes back a finding that was entered by mistake: it counts no more, its wordings are kept. Taken back twice it counts once, so
/// that a phone without signal may send until it hears an answer.
/// </summary>
internal sealed class WithdrawFinding(BarnStore store) : WriteRoute(HttpMethods.Delete, "/api/findings/{id}", "application/json", 64 * 1024)
{
    public override bool BodyIsOptional => true;

    public override bool ReadsWrites => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParseOptional(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var at = request.At(fields);
        if (fields.Faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
        var id = request.Name("id");
        if ((await store.Reader.FindingsAsync(cancellation)).Find(id) is not { } kept)
            return WriteDecision.Refuse(Refusal.NotFound("id", $"id is '{id}': no finding has it; GET /api/findings lists those that are."));
        return kept.WithdrawnAt is null ? WriteDecision.Take([new FindingWithdrawalWrite(kept.Current, at)], kept.Current) : WriteDecision.Take([], kept.Current);
    }
}
