using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Puts a cow on a visit's list by hand, or takes her off it.</summary>
internal sealed class DecideOnList(BarnStore store) : WriteRoute(HttpMethods.Put, "/api/visits/{date}/cows/{cow}", "application/json", 64 * 1024)
{
    private const int LongestBy = 100;

    public override bool ReadsState => true;

    public override async Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return WriteDecision.Refuse(refused);
        var day = request.Day("date", fields.Faults);
        var cow = await store.Reader.CowMeantAsync(request.Name("cow"), cancellation);
        var at = request.At(fields);
        var hand = Hand(fields);
        Leg? foot = null;
        if (fields.Text("foot", 1000) is { } named)
        {
            if (Legs.TryParseWireName(named, out var leg))
                foot = leg;
            else
                fields.Faults.Add("foot", $"foot is '{(named.Length > 60 ? named[..60] + "…" : named)}': one of lf rf lh rh, or null.");
        }

        var write = new TrimListHandWrite(at, day, cow, hand, fields.Text("reason", 1000)?.Trim() ?? "") { Foot = foot, By = fields.Text("by", LongestBy) ?? "" };
        if (!fields.Faults.Any)
            return await JudgeAsync(store, write, fields.Faults, mustBeKnown: true, cancellation);
        return WriteDecision.Refuse(Refusal.Invalid(fields.Faults));
    }

    /// <summary>Judges a decision whose members are read already.</summary>
    public static async Task<WriteDecision> JudgeAsync(BarnStore store, TrimListHandWrite write, Faults faults, bool mustBeKnown, CancellationToken cancellation)
    {
        var found = TrimListHandFaults.Of(write, await store.Reader.VisitsAsync(cancellation));
        // A visit that is not planned is no fault of the form.
        if (found is [("visit", var sentence)])
            return WriteDecision.Refuse(Refusal.NotFound("date", sentence));
        if (!found.IsEmpty)
            return WriteDecision.Refuse(Refusal.Invalid(faults.AddNew(found)));
        if (mustBeKnown && await store.Reader.CowAsync(write.Cow, cancellation) is null)
            return WriteDecision.Refuse(Refusal.UnknownCow(write.Cow));
        return WriteDecision.Take([write], ListDecisionView.Of(write));
    }

    private static TrimListHand Hand(JsonFields fields)
    {
        var text = fields.Text("hand", 1000);
        if (AlertNames.TryParse(text, TrimListNames.WireName, out TrimListHand hand) && hand != TrimListHand.AsRule)
            return hand;
        if (text is not null || !fields.Faults.Has("hand"))
            fields.Faults.Add("hand", $"hand is {(text is null ? "missing" : $"'{(text.Length > 60 ? text[..60] + "…" : text)}'")}: pinned to put her on the list, removed to take her off; DELETE takes either back.");
        return TrimListHand.Pinned;
    }
}
