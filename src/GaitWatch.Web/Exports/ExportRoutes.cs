using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Net.Http.Headers;

namespace GaitWatch.Web;

/// <summary>Findings and alerts for the veterinarian and other programs, as events of an open standard or as a table.</summary>
internal static class ExportRoutes
{
    private const string Json = "application/json";
    private const string Csv = "text/csv";

    public static void MapExports(this IEndpointRouteBuilder api)
    {
        api.MapGet("/api/export/findings", FindingsAsync)
            .Describe("Export", "Findings, oldest first, as diagnosis events of the ICAR Animal Data Exchange standard; where Accept asks for it as CSV (text/csv).")
            .Produces<IReadOnlyList<DiagnosisEvent>>(StatusCodes.Status200OK, Json, Csv).Refuses(400);
        api.MapGet("/api/export/alerts", AlertsAsync)
            .Describe("Export", "Alerts by when they were raised, oldest first, as attention events of the ICAR Animal Data Exchange standard; where Accept asks for it as CSV (text/csv).")
            .Produces<IReadOnlyList<AttentionEvent>>(StatusCodes.Status200OK, Json, Csv).Refuses(400);
    }

    private static async Task<IResult> FindingsAsync(HttpContext http, BarnStore store, string? from, string? to)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var log = await store.Reader.FindingsAsync(http.RequestAborted);
        var register = await store.Reader.RegisterAsync(http.RequestAborted);
        IReadOnlyList<DiagnosisEvent> events =
        [
            .. log.Findings.Where(finding => (begin is null || finding.At >= begin) && (end is null || finding.At < end))
                .Select(finding => IcarEvents.Of(log.Find(finding.Id)!, log, register)),
        ];
        return Answer(http, events, ExportCsv.Findings);
    }

    private static async Task<IResult> AlertsAsync(HttpContext http, BarnStore store, string? from, string? to)
    {
        var query = new QueryReader(store.Options.Calendar);
        var (begin, end) = query.Span(from, to);
        if (query.Faults.Any)
            return query.Refusal.ToResult();
        var register = await store.Reader.RegisterAsync(http.RequestAborted);
        var alerts = await store.Reader.AlertsAsync(begin, end, null, null, Page.All, http.RequestAborted);
        IReadOnlyList<AttentionEvent> events =
            [.. alerts.OrderBy(alert => alert.RaisedAt).ThenBy(alert => alert.Id, StringComparer.Ordinal).Select(alert => IcarEvents.Of(alert, register))];
        return Answer(http, events, ExportCsv.Alerts);
    }

    private static IResult Answer<T>(HttpContext http, IReadOnlyList<T> events, Func<IEnumerable<T>, string> render)
    {
        http.Response.Headers.Vary = HeaderNames.Accept;
        return Accepting.Wanted(http.Request, Json, Csv) == Csv ? TypedResults.Text(render(events), "text/csv; charset=utf-8") : TypedResults.Ok(events);
    }
}
