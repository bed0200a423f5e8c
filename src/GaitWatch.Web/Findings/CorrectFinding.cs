using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Corrects a finding; the earlier wording is kept. The body is the whole finding as it should read.</summary>
internal sealed class CorrectFinding(BarnStore store) : WriteRoute(HttpMethods.Put, "/api/findings/{id}", "application/json", 64 * 1024)
{
    public override bool ReadsWrites => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var id = request.Name("id");
        if ((await store.Reader.FindingsAsync(cancellation)).Find(id) is not { } kept)
            return WriteDecision.Refuse(Refusal.NotFound("id", $"id is '{id}': no finding has it; GET /api/findings lists those that are, POST /api/cows/{{cow}}/findings takes a new one."));
        // Entered for the wrong cow, it is corrected by naming the right one.
        var (finding, enteredAt) = FindingFields.Read(fields, id, fields.Text("cow", 1000) ?? kept.Current.Cow, request.ArrivedAt);
        if (finding is null)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
        return finding == kept.Current && kept.WithdrawnAt is null ? WriteDecision.Take([], finding) : WriteDecision.Take([new FindingCorrectionWrite(finding, enteredAt)], finding);
    }
}
