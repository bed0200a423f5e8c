using GaitWatch.Lameness;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Alerts: the list, one of them, and its closing.</summary>
internal static class AlertRoutes
{
    public static void MapAlerts(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/alerts", ListAsync)
            .Describe("Alerts", "Alerts by when they were raised, newest first, as they stand now.")
            .Gives<IReadOnlyList<AlertView>>().Refuses(400);
        api.MapGet("/api/alerts/{id}", OneAsync)
            .Describe("Alerts", "One alert. An id that late data has changed leads to its successor (308), one taken back is gone (410).")
            .Gives<AlertView>().Moves().Refuses(404, 410);
        api.MapGet("/api/alerts/{id}/evidence", EvidenceAsync)
            .Describe("Alerts", "The series behind one alert: shares, what was expected, residuals and the evidence as a fraction of the limit; default from three weeks before onset.")
            .Gives<AlertEvidenceView>().Moves().Refuses(400, 404, 410);
        api.MapPost("/api/alerts/{id}/close", CloseAsync)
            .Describe("Alerts", "Closes an alert by hand, with a reason, and gives it as it stands then.")
            .Takes<CloseAlertBody>("application/json")
            .Gives<AlertView>().Stores().Moves().Refuses(400, 404, 409, 410, 413, 415);
    }

    private static async Task<Results<Ok<IReadOnlyList<AlertView>>, ProblemHttpResult>> ListAsync(
        HttpContext http, BarnStore store, string? from, string? to, string? state, string? cow, string? page, string? pageSize)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        var stateName = query.OneOf("state", state, [.. Enum.GetValues<AlertState>().Select(s => s.WireName())]);
        var part = query.Page(page, pageSize);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        AlertState? wanted = AlertNames.TryParse<AlertState>(stateName, AlertNames.WireName, out var found) ? found : null;
        return TypedResults.Ok(await Paging.ReadAsync(
            http, part, p => store.Reader.AlertsAsync(begin, end, wanted, string.IsNullOrEmpty(cow) ? null : cow, p, http.RequestAborted)));
    }

    private static async Task<Results<Ok<AlertView>, RedirectHttpResult, ProblemHttpResult>> OneAsync(BarnStore store, string id, CancellationToken cancellation)
    {
        id = RouteNames.Read(id);
        var lookup = await store.Reader.AlertAsync(id, cancellation);
        if (lookup?.MovedTo is { } successor)
            return TypedResults.Redirect($"/api/alerts/{RouteNames.Write(successor)}", permanent: true, preserveMethod: true);
        return AlertRefusals.Of(id, lookup) is { } refusal ? refusal.ToResult() : TypedResults.Ok(lookup!.Alert!);
    }

    private static async Task<Results<Ok<AlertEvidenceView>, RedirectHttpResult, ProblemHttpResult>> EvidenceAsync(
        BarnStore store, string id, string? from, string? to, CancellationToken cancellation)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        id = RouteNames.Read(id);
        if (await store.Reader.AlertEvidenceAsync(id, begin, end, cancellation) is { } evidence)
            return TypedResults.Ok(evidence);
        var lookup = await store.Reader.AlertAsync(id, cancellation);
        return lookup?.MovedTo is { } successor
            ? TypedResults.Redirect($"/api/alerts/{RouteNames.Write(successor)}/evidence", permanent: true, preserveMethod: true)
            : (AlertRefusals.Of(id, lookup) ?? AlertRefusals.Of(id, null)!).ToResult();
    }

    private static Task<IResult> CloseAsync(HttpContext http, string id, WriteDesk desk, CloseAlert route, BarnStore store) =>
        desk.ServeAsync(http, route, async _ => await OneAsync(store, id, http.RequestAborted));
}
