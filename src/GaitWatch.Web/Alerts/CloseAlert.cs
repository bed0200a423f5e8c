using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Closes an alert by hand. What is written names cow, pattern, leg and instant, so that it survives a revision of the alert.</summary>
internal sealed class CloseAlert(BarnStore store) : WriteRoute(HttpMethods.Post, "/api/alerts/{id}/close", "application/json", 64 * 1024)
{
    public const int LongestNote = 1000;
    public const int LongestBy = 100;

    public override bool ReadsState => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var at = fields.Instant("at");
        var reason = fields.Text("reason", 100);
        var note = fields.Text("note", LongestNote) ?? "";
        var by = fields.Text("by", LongestBy) ?? "";
        return fields.Faults.Any
            ? WriteDecision.Refuse(Refusal.Invalid(fields.Faults))
            : await DecideAsync(request.Name("id"), at, reason, note, by, request.ArrivedAt, cancellation);
    }

    /// <summary>Judges a closing whose members are read already.</summary>
    public async Task<WriteDecision> DecideAsync(
        string id, DateTimeOffset? at, string? reason, string note, string by, DateTimeOffset arrivedAt, CancellationToken cancellation)
    {
        var lookup = await store.Reader.AlertAsync(id, cancellation);
        if (lookup?.MovedTo is { } successor)
            return WriteDecision.Elsewhere($"/api/alerts/{RouteNames.Write(successor)}/close");
        if (AlertRefusals.Of(id, lookup) is { } missing)
            return WriteDecision.Refuse(missing);
        var alert = lookup!.Alert!;
        if (alert.State == AlertState.Closed.WireName())
            return WriteDecision.Refuse(Refusal.Conflict("id", $"id is '{id}': this alert was closed at {alert.ClosedAt?.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'} already ({alert.CloseReason}); only an open one can be closed."));

        var faults = new Faults();
        var closedAt = ArrivalTime.Of(at, arrivedAt, faults);
        if (closedAt < alert.RaisedAt)
            faults.Add("at", $"at is {closedAt.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}, before the alert was raised at {alert.RaisedAt.UtcDateTime:yyyy-MM-dd'T'HH:mm:ss'Z'}: a time after that is needed.");
        if (!CloseReasons.TryParse(reason, out var why))
        {
            var found = reason is null ? "missing" : $"'{(reason.Length > 60 ? reason[..60] + "…" : reason)}'";
            faults.Add("reason", $"reason is {found}: one of {string.Join(", ", CloseReasons.ByHand.Select(r => r.WireName()))} is needed.");
        }

        if (faults.Any)
            return WriteDecision.Refuse(Refusal.Invalid(faults));
        if (!AlertNames.TryParse<AlertPattern>(alert.Pattern, AlertNames.WireName, out var pattern) || !Legs.TryParseWireName(alert.Leg, out var leg))
            throw new InvalidOperationException($"Alert '{id}' has pattern '{alert.Pattern}' and leg '{alert.Leg}', which the contract does not know.");
        return WriteDecision.Take(new CloseAlertWrite(closedAt, new AlertClosedByHand(alert.Cow, closedAt, pattern, leg, why, note, by)));
    }
}
