using GaitWatch.Gait;
using GaitWatch.Herd;
using GaitWatch.Store;
using Microsoft.AspNetCore.Http;

namespace GaitWatch.Web;

/// <summary>Registers a cow, or what is known of her from some instant on.</summary>
internal sealed class RegisterCow(BarnStore store) : WriteRoute(HttpMethods.Put, "/api/cows/{cow}", "application/json", 64 * 1024)
{
    public override Task<WriteDecision> DecideAsync(WriteRequest request, CancellationToken cancellation)
    {
        if (!JsonFields.TryParse(request.Body, out var fields, out var refused))
            return Task.FromResult(WriteDecision.Refuse(refused));
        var faults = fields.Faults;
        var cow = request.Name("cow");
        if (fields.Text("cow", 1000) is { } named && named != cow)
            faults.Add("cow", $"cow is '{named}' in the body and '{cow}' in the route: leave it out of the body, or make them the same.");
        var at = ArrivalTime.Of(fields.Instant("at"), request.ArrivedAt, faults);
        Eid? eid = null;
        if (fields.Text("eid", 1000) is { } digits)
        {
            if (Eid.TryParse(digits, out var read, out var fault))
                eid = read;
            else
                faults.Add("eid", fault);
        }

        var registration = new CowRegistration(cow, fields.InstantOrDay("from", store.Options.Calendar) ?? at)
        {
            Eid = eid,
            Pen = NullIfBlank(fields.Text("pen", 1000)),
            Parity = fields.Whole("parity"),
            CalvedOn = fields.Day("calvedOn"),
            DriedOffOn = fields.Day("driedOffOn"),
            DueOn = fields.Day("dueOn"),
            LeftOn = fields.Day("leftOn"),
            EnteredAt = at,
        };
        foreach (var (field, fault) in HerdRegisterFaults.Of(registration))
            faults.Add(field, fault);
        return Task.FromResult(
            faults.Any ? WriteDecision.Refuse(Refusal.Invalid(faults)) : WriteDecision.Take(new RegisterWrite(at, registration)));
    }

    private static string? NullIfBlank(string? text) => string.IsNullOrWhiteSpace(text) ? null : text.Trim();
}
