using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>
/// Takes what was found in a foot and done to it. The same finding sent twice counts once, and another body under a known id is
/// refused, so that a phone without signal may send until it hears an answer.
/// </summary>
/// <remarks>
/// A cow that nobody has registered is taken too: one that was at the chute was there. The answer warns of it.
/// </remarks>
internal sealed class RecordFinding(BarnStore store) : WriteRoute(HttpMethods.Post, "/api/cows/{cow}/findings", "application/json", 64 * 1024)
{
    public override bool ReadsWrites => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var given = request.Name("cow");
        var cow = await store.Reader.CowMeantAsync(given, cancellation);
        if (fields.Text("cow", 1000) is { } named && named != given && named != cow)
            fields.Faults.Add("cow", $"cow is '{named}' in the body and '{given}' in the route: leave it out of the body, or make them the same.");
        var (finding, enteredAt) = FindingFields.Read(fields, null, cow, request.ArrivedAt);
        if (finding is null)
            return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
        var log = await store.Reader.FindingsAsync(cancellation);
        return log.Judge(finding) switch
        {
            FindingVerdict.New => WriteDecision.Take([new FindingWrite(finding, enteredAt)], finding),
            FindingVerdict.Known => WriteDecision.Take([], finding),
            _ => WriteDecision.Refuse(Conflict(finding.Id)),
        };
    }

    /// <summary>The refusal of another body under an id that is known.</summary>
    public static Refusal Conflict(string id) => Refusal.Conflict(
        "id", $"id is '{id}', under which another finding is kept: give a new finding an id of its own, or correct the kept one with PUT /api/findings/{RouteNames.Write(id)}.");
}
