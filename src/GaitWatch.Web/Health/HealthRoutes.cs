using System.Data.Common;
using GaitWatch.Store;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Liveness and readiness. Metrics are mapped by the host, at <c>/metrics</c>.</summary>
internal static class HealthRoutes
{
    public static void MapHealth(this IEndpointRouteBuilder api)
    {
        api.MapGet("/healthz", () => TypedResults.Ok(new LivenessView(true)))
            .WithTags("Health").WithSummary("Answers while the process is alive.")
            .Gives<LivenessView>();
        api.MapGet("/readyz", ReadyAsync)
            .WithTags("Health").WithSummary("Whether the store can be read and the analysis gets on; lists what stands in the way.")
            .Gives<ReadinessView>().Gives<ReadinessView>(StatusCodes.Status503ServiceUnavailable);
    }

    private static async Task<IResult> ReadyAsync(BarnStore store, FoldWatch watch, CancellationToken cancellation)
    {
        var reasons = new List<string>();
        try
        {
            await store.Reader.IngestAsync(cancellation);
        }
        catch (Exception e) when (e is StoreUnavailableException or DbException)
        {
            reasons.Add(StoreTrouble.InWords(e));
        }

        if (watch.Stuck() is { } stuck)
            reasons.Add($"The analysis has stood still for {stuck.For.TotalMinutes:0} minutes with {stuck.Waiting} inputs waiting: see the log for what stops it. Nothing that came in is lost.");
        var view = new ReadinessView(reasons.Count == 0, reasons);
        return TypedResults.Json(view, statusCode: view.Ready ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable);
    }
}
