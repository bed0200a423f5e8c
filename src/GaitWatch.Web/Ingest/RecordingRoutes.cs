using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.AspNetCore.Routing;

namespace GaitWatch.Web;

/// <summary>Takes recorded inputs, for a replay.</summary>
internal static class RecordingRoutes
{
    private const string MediaType = "application/x-ndjson";

    public static void MapRecordings(this IEndpointRouteBuilder api) =>
        api.MapPost("/api/inputs", TakeAsync)
            .Describe("Ingest", "Takes recorded inputs, one a line: {\"topic\",\"payload\"} or {\"method\",\"route\",\"body\"}. Of any length; each line is judged as if it came now over its own way.")
            .Takes<string>(MediaType)
            .Gives<RecordingView>().Refuses(415);

    private static async Task<IResult> TakeAsync(HttpContext http, RecordingIntake intake)
    {
        if (BodyReader.WrongMediaType(http.Request, MediaType) is { } wrong)
            return wrong.ToResult();
        // A year of a barn is some gigabytes; it is read as fast as it becomes durable, so the sender is made to wait by design.
        if (http.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
            size.MaxRequestBodySize = null;
        if (http.Features.Get<Microsoft.AspNetCore.Server.Kestrel.Core.Features.IHttpMinRequestBodyDataRateFeature>() is { } rate)
            rate.MinDataRate = null;
        return TypedResults.Ok(await intake.TakeAsync(http.Request.BodyReader, http.RequestAborted));
    }
}
